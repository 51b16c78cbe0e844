using Dapper;

namespace JobBoard.Storage.SignIn;

/// <summary>A device's wrong PINs since the last right one.</summary>
/// <param name="Id">The device.</param>
/// <param name="WrongCount">How many, 0 for one that is not known.</param>
/// <param name="BlockedUntil">Unix milliseconds; null when it need not wait.</param>
public sealed record DeviceRow(string Id, long WrongCount, long? BlockedUntil);

/// <summary>Slows a device down on wrong PINs. How much is the caller's to say.</summary>
public sealed class DeviceStore(ShopDatabase database)
{
    /// <summary>How the device stands.</summary>
    public DeviceRow Find(string id) => database.Read(connection => connection.QuerySingleOrDefault<DeviceRow>(
        "SELECT id AS Id, wrong_count AS WrongCount, blocked_until AS BlockedUntil FROM devices WHERE id = @id", new { id })) ?? new(id, 0, null);

    /// <summary>Counts one wrong PIN and blocks the device for as long as that count asks.</summary>
    /// <param name="id">The device.</param>
    /// <param name="blockUntil">From the new count to an instant in Unix milliseconds, or null.</param>
    public DeviceRow CountWrong(string id, Func<long, long?> blockUntil) => database.Write(connection =>
    {
        var count = connection.ExecuteScalar<long>(
            """
            INSERT INTO devices (id, wrong_count) VALUES (@id, 1)
            ON CONFLICT (id) DO UPDATE SET wrong_count = wrong_count + 1 RETURNING wrong_count
            """,
            new { id });
        var until = blockUntil(count);
        connection.Execute("UPDATE devices SET blocked_until = @until WHERE id = @id", new { id, until });
        return new DeviceRow(id, count, until);
    });

    /// <summary>A right PIN clears the count.</summary>
    public void Clear(string id) => database.Write(connection => connection.Execute("DELETE FROM devices WHERE id = @id", new { id }));
}
