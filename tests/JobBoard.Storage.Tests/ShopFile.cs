using JobBoard.Storage.History;
using JobBoard.Storage.Journal;
using JobBoard.Storage.Outcomes;
using Microsoft.Data.Sqlite;

namespace JobBoard.Storage.Tests;

/// <summary>A shop's file of a test's own, with its book open, and the door at the back: a raw connection that follows no rule of ours.</summary>
internal sealed class ShopFile : IDisposable
{
    public const long Noon = 1_700_000_000_000;

    private readonly TemporaryFolder _folder = new();

    public ShopFile(params IHistoryProjection[] projections) => (Database, Journal) = Open(projections);

    public ShopDatabase Database { get; private set; }

    public SqliteJournal Journal { get; private set; }

    public string Path => _folder.File("shop.db");

    public void Reopen(params IHistoryProjection[] projections)
    {
        Close();
        (Database, Journal) = Open(projections);
    }

    public void Close()
    {
        Journal.Dispose();
        Database.Dispose();
    }

    public SqliteConnection Raw()
    {
        var connection = new SqliteConnection($"Data Source={Path};Pooling=False");
        connection.Open();
        return connection;
    }

    public CommandOutcome Append(string stream, params string[] bodies)
    {
        var command = Command();
        using var group = Journal.BeginGroup();
        group.Append(command, [.. bodies.Select(body => new NewEntry(stream, "Noted", 1, body, "p-1", Noon, command.CommandId))]);
        group.Commit();
        return command;
    }

    public void Blank(long seq)
    {
        var command = Command();
        using var group = Journal.BeginGroup();
        group.Blank(command, new("shop", "TextTakenOut", 1, $$"""{"blanks":{{seq}}}""", "p-1", Noon, command.CommandId), [seq]);
        group.Commit();
    }

    public static CommandOutcome Command() => new(Guid.NewGuid(), [1, 2, 3], "{}", "p-1", Noon);

    public void Dispose()
    {
        Close();
        _folder.Dispose();
    }

    private (ShopDatabase Database, SqliteJournal Journal) Open(IHistoryProjection[] projections)
    {
        var database = ShopDatabase.Open(Path);
        return (database, SqliteJournal.Open(database, "shop-1", projections));
    }
}
