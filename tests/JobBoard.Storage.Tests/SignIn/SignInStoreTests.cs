using System.Text;
using Dapper;
using JobBoard.Storage.SignIn;

namespace JobBoard.Storage.Tests.SignIn;

public sealed class CredentialStoreTests : IDisposable
{
    private readonly ShopFile _file = new();

    private CredentialStore Store => new(_file.Database);

    public void Dispose() => _file.Dispose();

    [Fact]
    public void A_person_without_a_pin_has_no_hash()
    {
        Assert.Null(Store.FindPinHash("p-1"));
        Assert.Empty(Store.PersonIds());
        Assert.False(Store.Remove("p-1"));
    }

    [Fact]
    public void A_new_hash_takes_the_place_of_the_old()
    {
        Store.Keep("p-1", "first", 1);
        Store.Keep("p-2", "other", 1);
        Store.Keep("p-1", "second", 2);

        Assert.Equal("second", Store.FindPinHash("p-1"));
        Assert.Equal(["p-1", "p-2"], Store.PersonIds());
    }

    [Fact]
    public void A_hash_removed_is_gone()
    {
        Store.Keep("p-1", "first", 1);

        Assert.True(Store.Remove("p-1"));

        Assert.Null(Store.FindPinHash("p-1"));
    }

    [Fact]
    public void A_hash_outlives_a_restart()
    {
        Store.Keep("p-1", "first", 1);

        _file.Reopen();

        Assert.Equal("first", Store.FindPinHash("p-1"));
    }
}

public sealed class TokenStoreTests : IDisposable
{
    private readonly ShopFile _file = new();

    private TokenStore Store => new(_file.Database);

    public void Dispose() => _file.Dispose();

    [Fact]
    public void A_token_opens_its_own_kind_of_thing()
    {
        var token = Store.Create("t-1", "wall", "Wall by the door", 10);

        Assert.Equal(43, token.Length);
        Assert.Equal(new TokenRow("t-1", "wall", "Wall by the door", 10, null, null, null), Store.Find(token, "wall", 20));
        Assert.Null(Store.Find(token, "set-up", 20));
        Assert.Null(Store.Find(token[..^1] + (token[^1] == 'A' ? 'E' : 'A'), "wall", 20));
        Assert.Null(Store.Find("", "wall", 20));
    }

    [Fact]
    public void The_token_itself_is_kept_nowhere()
    {
        var token = Store.Create("t-1", "wall", "Wall", 10);
        using var raw = _file.Raw();

        var hash = raw.QuerySingle<byte[]>("SELECT hash FROM tokens");

        Assert.Equal(System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(token)), hash);
        Assert.Equal(0, raw.ExecuteScalar<long>("SELECT COUNT(*) FROM tokens WHERE id || kind || label LIKE '%' || @token || '%'", new { token }));
    }

    [Fact]
    public void A_token_run_out_opens_nothing()
    {
        var token = Store.Create("t-1", "wall", "Wall", 10, 100);

        Assert.NotNull(Store.Find(token, "wall", 99));
        Assert.Null(Store.Find(token, "wall", 100));
    }

    [Fact]
    public void A_token_withdrawn_opens_nothing_and_is_withdrawn_once()
    {
        var token = Store.Create("t-1", "set-up", "Owner", 10);

        Assert.True(Store.Withdraw("t-1", 20));
        Assert.False(Store.Withdraw("t-1", 30));
        Assert.False(Store.Withdraw("t-2", 30));

        Assert.Null(Store.Find(token, "set-up", 21));
        Assert.Equal(20, Store.List("set-up").Single().WithdrawnAt);
    }

    [Fact]
    public void A_use_is_noted_and_the_list_is_newest_first()
    {
        Store.Create("t-1", "wall", "Old", 10);
        Store.Create("t-2", "wall", "New", 20);
        Store.NoteUse("t-1", 30);

        Assert.Equal([("t-2", null), ("t-1", 30L)], Store.List("wall").Select(t => (t.Id, t.LastUsedAt)));
    }
}

public sealed class DeviceStoreTests : IDisposable
{
    private readonly ShopFile _file = new();

    private DeviceStore Store => new(_file.Database);

    public void Dispose() => _file.Dispose();

    [Fact]
    public void An_unknown_device_need_not_wait() => Assert.Equal(new DeviceRow("d-1", 0, null), Store.Find("d-1"));

    [Fact]
    public void Wrong_pins_count_up_and_block_as_told()
    {
        long? Until(long count) => count < 3 ? null : 1000 * count;

        Store.CountWrong("d-1", Until);
        Store.CountWrong("d-1", Until);
        Assert.Equal(new DeviceRow("d-1", 2, null), Store.Find("d-1"));

        Assert.Equal(new DeviceRow("d-1", 3, 3000), Store.CountWrong("d-1", Until));
        Assert.Equal(new DeviceRow("d-1", 3, 3000), Store.Find("d-1"));
        Assert.Equal(0, Store.Find("d-2").WrongCount);
    }

    [Fact]
    public void A_right_pin_clears_the_count()
    {
        Store.CountWrong("d-1", _ => 5000);

        Store.Clear("d-1");

        Assert.Equal(new DeviceRow("d-1", 0, null), Store.Find("d-1"));
    }
}
