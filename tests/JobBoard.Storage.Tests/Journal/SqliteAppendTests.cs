using Dapper;
using JobBoard.Storage.History;
using JobBoard.Storage.Journal;

namespace JobBoard.Storage.Tests.Journal;

/// <summary>The contract, kept by a real SQLite file.</summary>
public sealed class SqliteAppendTests : AppendContract
{
    private readonly TemporaryFolder _folder = new();
    private readonly List<ShopDatabase> _databases = [];

    public override void Dispose()
    {
        _databases.ForEach(database => database.Dispose());
        _folder.Dispose();
        base.Dispose();
    }

    protected override IJournal Open(params IHistoryProjection[] projections)
    {
        _databases.Add(ShopDatabase.Open(_folder.File("shop.db")));
        return SqliteJournal.Open(_databases[^1], "shop-1", projections);
    }

    protected override IHistoryProjection FailingAtCommit(Func<bool> fail) => new Orphan(fail);

    /// <summary>A reference that SQLite checks at the commit and no earlier.</summary>
    private sealed class Orphan(Func<bool> fail) : IHistoryProjection
    {
        public string Name => "orphan";

        public string Stamp => "1";

        public IReadOnlyList<HistoryTable> Tables =>
            [new("orphan", "seq INTEGER PRIMARY KEY, parent INTEGER REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED")];

        public void Apply(HistoryTarget target, JournalRow row) => target.Connection.Execute(
            $"INSERT INTO {target.Table("orphan")} VALUES (@Seq, @parent)", new { row.Seq, parent = fail() ? row.Seq + 1000 : row.Seq });
    }
}
