using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace JobBoard.Storage.Journal;

/// <summary>
/// The hashes of the day book. Each field goes in with its length before it, numbers as eight bytes, so that no two
/// different entries are the same bytes. The body enters only through its commitment.
/// </summary>
internal static class ChainHash
{
    public const int SaltBytes = 32;

    private const string Domain = "jobboard day book entry 1";

    /// <summary>What stands before the first entry: 32 zero bytes.</summary>
    public static byte[] Start => new byte[SHA256.HashSizeInBytes];

    public static byte[] Commitment(ReadOnlySpan<byte> salt, string body)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(salt);
        hash.AppendData(Encoding.UTF8.GetBytes(body));
        return hash.GetHashAndReset();
    }

    public static byte[] Entry(StoredRow row)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Add(hash, Domain);
        Add(hash, row.PrevHash);
        Add(hash, row.ShopId);
        Add(hash, row.Seq);
        Add(hash, row.Stream);
        Add(hash, row.Version);
        Add(hash, row.Kind);
        Add(hash, row.Schema);
        Add(hash, row.Actor);
        Add(hash, row.OccurredAt);
        Add(hash, row.RecordedAt);
        Add(hash, row.CommandId);
        Add(hash, row.BodyCommitment);
        return hash.GetHashAndReset();
    }

    private static void Add(IncrementalHash hash, string text) => Add(hash, Encoding.UTF8.GetBytes(text));

    private static void Add(IncrementalHash hash, byte[] bytes)
    {
        Add(hash, bytes.LongLength);
        hash.AppendData(bytes);
    }

    private static void Add(IncrementalHash hash, long number)
    {
        Span<byte> bytes = stackalloc byte[sizeof(long)];
        BinaryPrimitives.WriteInt64BigEndian(bytes, number);
        hash.AppendData(bytes);
    }
}
