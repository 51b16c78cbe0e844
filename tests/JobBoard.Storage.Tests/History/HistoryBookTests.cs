using Dapper;
using JobBoard.Storage.History;
using JobBoard.Storage.Journal;

namespace JobBoard.Storage.Tests.History;

/// <summary>The mechanism, with a projection that counts and quotes.</summary>
public sealed class HistoryBookTests : IDisposable
{
    private readonly ShopFile _file = new(new Quotes("1"));

    public void Dispose() => _file.Dispose();

    [Fact]
    public void Tables_move_with_the_append_that_moves_the_book()
    {
        _file.Append("car-1", "a", "b");
        Assert.Equal(["car-1 2 b"], Live());

        using (var group = _file.Journal.BeginGroup())
        {
            var command = ShopFile.Command();
            group.Append(command, [new("car-1", "Noted", 1, "c", "p-1", 0, command.CommandId)]);
        }

        Assert.Equal(["car-1 2 b"], Live());
    }

    [Fact]
    public void Rebuilt_equals_live_over_several_pages()
    {
        for (var i = 0; i < 22; i++)
        {
            _file.Append("car-" + i % 5, [.. Enumerable.Range(0, 100).Select(n => $"{i} {n}")]);
        }

        var live = Live();
        Assert.Equal(2200, _file.Journal.Head());

        _file.Journal.RebuildHistory();

        Assert.Equal(live, Live());
        _file.Append("car-0", "after");
        Assert.Contains("car-0 501 after", Live());
    }

    [Fact]
    public void A_rebuild_leaves_no_shadow_and_keeps_the_indexes()
    {
        _file.Append("car-1", "a");
        _file.Journal.RebuildHistory();
        _file.Journal.RebuildHistory();

        using var raw = _file.Raw();
        Assert.Empty(raw.Query<string>("SELECT name FROM sqlite_schema WHERE tbl_name LIKE 'shadow%'"));
        Assert.Single(raw.Query<string>("SELECT name FROM sqlite_schema WHERE type = 'index' AND sql IS NOT NULL AND tbl_name = 'history_quotes'"));
    }

    [Fact]
    public void A_new_stamp_rebuilds_at_open_and_the_same_does_not()
    {
        _file.Append("car-1", "a", "b");
        Spoil();
        _file.Reopen(new Quotes("1"));
        Assert.Equal(["spoilt 2 b"], Live());

        _file.Reopen(new Quotes("2"));

        Assert.Equal(["car-1 2 b"], Live());
    }

    [Fact]
    public void What_was_missed_while_absent_is_made_up_for()
    {
        _file.Append("car-1", "a");
        _file.Reopen();
        _file.Append("car-1", "b");
        Assert.Equal(["car-1 1 a"], Live());

        _file.Reopen(new Quotes("1"));

        Assert.Equal(["car-1 2 b"], Live());
    }

    [Fact]
    public void A_rebuild_that_fails_leaves_the_live_tables()
    {
        _file.Append("car-1", "a", "b");
        var quotes = new Quotes("1");
        _file.Reopen(quotes);
        quotes.Throws = true;

        Assert.Throws<NotSupportedException>(_file.Journal.RebuildHistory);

        quotes.Throws = false;
        Assert.Equal(["car-1 2 b"], Live());
        _file.Journal.RebuildHistory();
        Assert.Equal(["car-1 2 b"], Live());
    }

    [Fact]
    public void Blanked_text_leaves_history_with_the_body()
    {
        _file.Append("car-1", """{"name":"someone"}""");
        Assert.Equal(["""car-1 1 {"name":"someone"}"""], Live());

        _file.Blank(1);

        Assert.Equal(["car-1 1 ", """shop 1 {"blanks":1}"""], Live());
    }

    [Fact]
    public void A_blanking_not_committed_leaves_history_as_it_was()
    {
        _file.Append("car-1", "a");
        using (var group = _file.Journal.BeginGroup())
        {
            var command = ShopFile.Command();
            group.Blank(command, new("shop", "TextTakenOut", 1, """{"blanks":1}""", "p-1", 0, command.CommandId), [1]);
        }

        Assert.Equal(["car-1 1 a"], Live());
        _file.Append("car-1", "b");
        Assert.Equal(["car-1 2 b"], Live());
    }

    private List<string> Live()
    {
        using var reader = _file.Database.OpenReader();
        return [.. reader.Query<string>("SELECT stream || ' ' || entries || ' ' || last FROM history_quotes ORDER BY stream")];
    }

    private void Spoil()
    {
        using var raw = _file.Raw();
        raw.Execute("UPDATE history_quotes SET stream = 'spoilt'");
    }

    private sealed class Quotes(string stamp) : IHistoryProjection
    {
        public bool Throws { get; set; }

        public string Name => "quotes";

        public string Stamp => stamp;

        public IReadOnlyList<HistoryTable> Tables =>
            [new("quotes", "stream TEXT PRIMARY KEY, entries INTEGER NOT NULL, last TEXT NOT NULL", "entries")];

        public void Apply(HistoryTarget target, JournalRow row)
        {
            if (Throws)
            {
                throw new NotSupportedException();
            }

            target.Connection.Execute(
                $"""
                 INSERT INTO {target.Table("quotes")} VALUES (@Stream, 1, @Body)
                 ON CONFLICT (stream) DO UPDATE SET entries = entries + 1, last = excluded.last
                 """,
                new { row.Stream, row.Body });
        }
    }
}
