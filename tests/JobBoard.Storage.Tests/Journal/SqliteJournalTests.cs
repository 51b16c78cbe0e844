using System.Text;
using Dapper;
using JobBoard.Storage.History;
using JobBoard.Storage.Journal;
using JobBoard.Storage.Outcomes;

namespace JobBoard.Storage.Tests.Journal;

/// <summary>What the SQLite book promises beyond the contract.</summary>
public sealed class SqliteJournalTests : IDisposable
{
    private readonly ShopFile _file = new();

    public void Dispose() => _file.Dispose();

    [Fact]
    public void The_writer_is_durable_and_strict() =>
        Assert.Equal(new WriterPragmas("wal", "full", true, true, true, 5000), _file.Journal.WriterPragmas());

    [Fact]
    public void Groups_committed_are_counted_not_commands()
    {
        using (var group = _file.Journal.BeginGroup())
        {
            group.RecordRefusal(ShopFile.Command());
            group.RecordRefusal(ShopFile.Command());
            group.Commit();
        }

        _file.Append("car-1", "{}");

        Assert.Equal(2, _file.Journal.GroupsCommitted);
    }

    [Fact]
    public void A_file_keeps_to_its_shop()
    {
        var error = Assert.Throws<StorageException>(() => SqliteJournal.Open(_file.Database, "shop-2"));

        Assert.Contains("shop-1", error.Message, StringComparison.Ordinal);
        Assert.Contains(_file.Path, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_file_has_another_journal_id()
    {
        using var other = new ShopFile();

        Assert.NotEqual(_file.Journal.JournalId, other.Journal.JournalId);
    }

    [Fact]
    public void Salts_come_from_where_they_are_asked_to()
    {
        using var folder = new TemporaryFolder();
        using var database = ShopDatabase.Open(folder.File("a.db"), () => Guid.Empty);
        using var journal = SqliteJournal.Open(database, "shop-1", [], salt => Array.Fill(salt, (byte)7));
        var command = ShopFile.Command();
        using var group = journal.BeginGroup();

        var row = group.Append(command, [new("car-1", "Noted", 1, "{}", "p-1", 0, command.CommandId)]).Single();

        Assert.All(row.BodySalt, b => Assert.Equal(7, b));
        Assert.Equal(Guid.Empty, journal.JournalId);
    }

    [Fact]
    public void A_blanked_body_is_nowhere_in_the_files()
    {
        const string secret = "Quetzalcoatlus";
        _file.Append("shop", $$"""{"name":"{{secret}}"}""");
        Assert.True(InFiles(secret));

        _file.Blank(1);

        Assert.False(InFiles(secret));
    }

    [Fact]
    public void A_full_disk_takes_the_whole_group_and_nothing_else()
    {
        _file.Reopen(new DiskFiller());
        _file.Append("car-1", "{}");
        var (first, second) = (ShopFile.Command(), ShopFile.Command());
        using (var group = _file.Journal.BeginGroup())
        {
            group.Append(first, [new("car-1", "Noted", 1, "{}", "p-1", 0, first.CommandId)]);
            var error = Assert.Throws<StorageException>(
                () => group.Append(second, [new("car-1", DiskFiller.Kind, 1, "{}", "p-1", 0, second.CommandId)]));
            Assert.Contains("full", error.Message, StringComparison.Ordinal);
            Assert.Throws<CommitFailedException>(group.Commit);
        }

        Assert.Equal(1, _file.Journal.Head());
        Assert.Equal(OutcomeMatch.Unknown, _file.Journal.Find(first.CommandId, first.Hash).Match);
        _file.Reopen();
        _file.Append("car-1", "{}");
        Assert.Equal(2, _file.Journal.VerifyChain().Entries);
    }

    [Fact]
    public async Task Readers_see_whole_groups_while_the_writer_works()
    {
        using var stop = new CancellationTokenSource();
        using var reading = new CountdownEvent(3);
        var readers = Enumerable.Range(0, reading.InitialCount)
            .Select(_ => Task.Factory.StartNew(() => ReadUntil(stop.Token, reading), TaskCreationOptions.LongRunning)).ToList();

        var groups = 0;
        for (; groups < 60 || (!reading.IsSet && groups < 5000); groups++)
        {
            _file.Append("car-" + groups % 3, "{}", "{}", "{}", "{}", "{}");
        }

        await stop.CancelAsync();
        await Task.WhenAll(readers);
        Assert.True(reading.IsSet);
        Assert.Equal(groups * 5, _file.Journal.VerifyChain().Entries);
    }

    [Fact]
    public void A_reading_stays_as_it_was_when_it_began()
    {
        _file.Append("car-1", "{}", "{}");
        using var reading = _file.Journal.Read().GetEnumerator();
        Assert.True(reading.MoveNext());

        _file.Append("car-1", "{}");

        Assert.True(reading.MoveNext());
        Assert.False(reading.MoveNext());
        Assert.Equal(3, _file.Journal.Head());
    }

    [Fact]
    public void A_reader_cannot_write()
    {
        using var reader = _file.Database.OpenReader();

        Assert.ThrowsAny<Exception>(() => reader.Execute("DELETE FROM commands"));
    }

    [Fact]
    public void A_file_of_another_kind_is_refused_in_words()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder.File("shop.db"), new string('x', 5000));

        var error = Assert.Throws<StorageException>(() => ShopDatabase.Open(folder.File("shop.db")));

        Assert.Contains("not a Job Board database", error.Message, StringComparison.Ordinal);
    }

    private void ReadUntil(CancellationToken stop, CountdownEvent reading)
    {
        for (var last = 0; !stop.IsCancellationRequested;)
        {
            var seqs = _file.Journal.Read().Select(r => r.Seq).ToList();
            Assert.Equal(0, seqs.Count % 5);
            Assert.Equal(Enumerable.Range(1, seqs.Count).Select(i => (long)i), seqs);
            Assert.True(seqs.Count >= last);
            if (last == 0 && seqs.Count > 0)
            {
                reading.Signal();
            }

            last = seqs.Count;
        }
    }

    private bool InFiles(string text) => Directory.GetFiles(Path.GetDirectoryName(_file.Path)!).Any(file =>
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray().AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0;
    });

    /// <summary>Lets the file grow no further and then asks for more, which is what a full disk looks like from inside.</summary>
    private sealed class DiskFiller : IHistoryProjection
    {
        public const string Kind = "DiskFilled";

        public string Name => "filler";

        public string Stamp => "1";

        public IReadOnlyList<HistoryTable> Tables => [new("filler", "seq INTEGER PRIMARY KEY, bytes BLOB")];

        public void Apply(HistoryTarget target, JournalRow row)
        {
            if (row.Kind == Kind)
            {
                target.Connection.Execute("PRAGMA max_page_count = 1");
                target.Connection.Execute($"INSERT INTO {target.Table("filler")} VALUES (@Seq, zeroblob(1000000))", new { row.Seq });
            }
        }
    }
}
