using JobBoard.Storage.SignIn;

namespace JobBoard.Storage.Tests.SignIn;

public sealed class WallScreenStoreTests : IDisposable
{
    private readonly ShopFile _file = new();

    public void Dispose() => _file.Dispose();

    [Fact]
    public void A_screen_set_again_takes_the_place_of_the_old()
    {
        var tokens = new TokenStore(_file.Database);
        tokens.Create("door", "wall", "over the door", 1);
        tokens.Create("gate", "wall", "at the gate", 1);
        new WallScreenStore(_file.Database).Set("door", new(4, 65));
        new WallScreenStore(_file.Database).Set("door", new(2.5, 43));

        var kept = Assert.Single(new WallScreenStore(_file.Database).All());

        Assert.Equal(("door", new WallScreen(2.5, 43)), (kept.Key, kept.Value));
    }
}
