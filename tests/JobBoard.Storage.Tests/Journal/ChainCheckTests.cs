using System.Text;
using Dapper;
using JobBoard.Storage.Journal;

namespace JobBoard.Storage.Tests.Journal;

public sealed class ChainCheckTests : IDisposable
{
    private readonly ShopFile _file = new();

    public ChainCheckTests()
    {
        _file.Append("car-1", """{"words":"lift the engine"}""", """{"words":"second"}""");
        _file.Append("shop", """{"words":"third"}""");
        _file.Append("car-1", """{"words":"fourth"}""");
    }

    public void Dispose() => _file.Dispose();

    [Fact]
    public void An_untouched_book_holds()
    {
        var check = _file.Journal.VerifyChain();

        Assert.Equal((true, 4L), (check.Holds, check.Entries));
        Assert.Equal(_file.Journal.Read(4).Single().EntryHash, check.HeadHash);
    }

    [Theory]
    [InlineData("stream = 'car-9'")]
    [InlineData("version = 7")]
    [InlineData("kind = 'Other'")]
    [InlineData("schema = 2")]
    [InlineData("body = '{\"words\":\"Second\"}'")]
    [InlineData("body = '', body_salt = x''")]
    [InlineData("actor = 'p-2'")]
    [InlineData("occurred_at = occurred_at + 1")]
    [InlineData("recorded_at = recorded_at - 1")]
    [InlineData("command_id = 'not an id'")]
    [InlineData("shop_id = 'shop-2'")]
    [InlineData("body_salt = zeroblob(32)")]
    [InlineData("body_commitment = zeroblob(32)")]
    [InlineData("prev_hash = zeroblob(32)")]
    [InlineData("entry_hash = zeroblob(32)")]
    public void A_changed_column_is_found_at_its_entry(string change)
    {
        Tamper($"UPDATE journal SET {change} WHERE seq = 2");

        Assert.Equal(2, _file.Journal.VerifyChain().FirstBreak?.Seq);
    }

    [Fact]
    public void A_changed_entry_with_its_hash_mended_is_found_at_the_next()
    {
        Tamper("UPDATE journal SET actor = 'p-2' WHERE seq = 2");
        Tamper($"UPDATE journal SET entry_hash = x'{Convert.ToHexString(HashAsItStands(2))}' WHERE seq = 2");

        Assert.Equal(3, _file.Journal.VerifyChain().FirstBreak?.Seq);
    }

    [Fact]
    public void A_missing_entry_is_found()
    {
        Tamper("DELETE FROM journal WHERE seq = 2");

        Assert.Equal(new ChainBreak(2, "this number is missing"), _file.Journal.VerifyChain().FirstBreak);
    }

    [Fact]
    public void A_cut_end_shows_in_the_head_hash()
    {
        var before = _file.Journal.VerifyChain();

        Tamper("DELETE FROM journal WHERE seq = 4");

        var after = _file.Journal.VerifyChain();
        Assert.True(after.Holds);
        Assert.NotEqual((before.Entries, Convert.ToHexString(before.HeadHash)), (after.Entries, Convert.ToHexString(after.HeadHash)));
    }

    [Fact]
    public void A_byte_flipped_in_the_file_is_found()
    {
        _file.Close();
        var bytes = File.ReadAllBytes(_file.Path);
        var at = bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes("lift the engine"));
        bytes[at] ^= 1;
        File.WriteAllBytes(_file.Path, bytes);
        _file.Reopen();

        Assert.Equal(new ChainBreak(1, "the body is not as it was written"), _file.Journal.VerifyChain().FirstBreak);
    }

    [Fact]
    public void A_blanked_body_put_back_changed_is_found()
    {
        _file.Blank(2);
        Assert.True(_file.Journal.VerifyChain().Holds);

        Tamper("UPDATE journal SET body = 'other', body_salt = zeroblob(32) WHERE seq = 2");

        Assert.Equal(2, _file.Journal.VerifyChain().FirstBreak?.Seq);
    }

    private void Tamper(string sql)
    {
        using var raw = _file.Raw();
        raw.Execute("DROP TRIGGER IF EXISTS journal_no_update; DROP TRIGGER IF EXISTS journal_no_delete;");
        Assert.Equal(1, raw.Execute(sql));
    }

    private byte[] HashAsItStands(long seq)
    {
        var row = _file.Journal.Read(seq).First();
        return ChainHash.Entry(new StoredRow(
            row.ShopId, row.Seq, row.Stream, row.Version, row.Kind, row.Schema, row.Body, row.Actor, row.OccurredAt, row.RecordedAt,
            row.CommandId.ToString("D"), row.BodySalt, row.BodyCommitment, row.PrevHash, row.EntryHash));
    }
}
