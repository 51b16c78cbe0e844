using JobBoard.Domain.Boards;

namespace JobBoard.Web.Posting;

/// <summary>The shop's time zone; UTC until a known one is set.</summary>
public static class ShopZone
{
    /// <summary>The zone a shop's times are typed and shown in.</summary>
    public static TimeZoneInfo Of(ShopState shop) => TimeZoneInfo.TryFindSystemTimeZoneById(shop.Zone, out var zone) ? zone : TimeZoneInfo.Utc;
}
