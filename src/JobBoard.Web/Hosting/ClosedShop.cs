using JobBoard.Storage;
using JobBoard.Storage.Folder;
using JobBoard.Storage.History;
using JobBoard.Storage.Journal;

namespace JobBoard.Web.Hosting;

/// <summary>A shop's day book opened while no server runs it.</summary>
internal sealed class ClosedShop : IDisposable
{
    private ClosedShop(DataFolder folder, ShopDatabase database, SqliteJournal journal) => (Folder, Database, Journal) = (folder, database, journal);

    public DataFolder Folder { get; }

    public ShopDatabase Database { get; }

    public SqliteJournal Journal { get; }

    /// <summary>Opens the folder given, or the usual one. It must hold a shop already.</summary>
    public static ClosedShop Open(string? path)
    {
        var full = Path.GetFullPath(path ?? DataFolder.DefaultPath);
        if (!Directory.Exists(full)) throw new DataFolderException($"There is no folder {full}. Name the shop's folder with --data.");
        var folder = DataFolder.Open(full);
        if (!File.Exists(folder.DatabaseFile))
        {
            folder.Dispose();
            throw new DataFolderException($"There is no shop in {full}. Name the shop's folder with --data.");
        }

        var database = ShopDatabase.Open(folder.DatabaseFile);
        return new(folder, database, SqliteJournal.Open(database, Shop.Running.OpenShop.ShopId, Histories.All));
    }

    public void Dispose()
    {
        Journal.Dispose();
        Database.Dispose();
        Folder.Dispose();
    }
}
