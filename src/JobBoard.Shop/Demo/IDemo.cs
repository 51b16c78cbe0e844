using System.Collections.Immutable;
using JobBoard.Shop.Running;

namespace JobBoard.Shop.Demo;

/// <summary>Fills an empty shop with a made-up one.</summary>
public interface IDemo
{
    /// <summary>Sends the demo's commands through the same door as people's, each at its own time, up to the shop's now.</summary>
    /// <returns>The PIN of each person who has one.</returns>
    /// <exception cref="DemoException">A seed file is wrong, or one of its commands was refused.</exception>
    Task<ImmutableSortedDictionary<string, string>> Load(ShopRunner runner, ShopClock clock);
}
