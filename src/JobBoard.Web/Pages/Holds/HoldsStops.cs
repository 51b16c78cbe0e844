using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Holds;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Bay;
using JobBoard.Web.Pages.Floor;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.Holds;

/// <summary>Stops as the person who looks at the holds sees them.</summary>
internal sealed class HoldsStops(Picture picture, Person me)
{
    private readonly ShopState _shop = picture.Shop;

    public HoldsStop Of(Stop stop)
    {
        var told = stop.Told.ContainsKey(me.Id);
        var may = MayPost.May<ReleaseStop>(me.Position) && !Looks.IsOwnWork(_shop, stop, me.Id);
        return new()
        {
            Id = stop.Id,
            Scope = FloorMapping.ScopeWords(_shop, stop),
            Why = _shop.Say(stop.Why),
            RaisedBy = stop.Clash is null ? _shop.NameOf(stop.RaisedBy) : "the board",
            RaisedAt = picture.Local(stop.RaisedAt),
            Heard = Names(stop, heard: true),
            NotHeard = Names(stop, heard: false),
            AsksMe = stop.Told.TryGetValue(me.Id, out var at) && at is null,
            MadeSafe = stop.Safe is { } safe ? $"Made safe by {_shop.NameOf(safe.By)}: {safe.How}" : null,
            MadeSafeAt = stop.Safe is { } made ? picture.Local(made.At) : null,
            MakeSafe = BayStops.Of(picture, stop, me) is { ToMakeSafe: not null } asked ? asked : null,
            IsMineToMakeSafe = stop.Safe is null && told,
            MayRelease = stop.Safe is not null && may,
            ReleasedBy = may ? null : Releasers(stop),
            LetThrough = may ? [.. Cars(stop).Select(c => LetThroughView.Of(c, picture.Open(c), stop.Id)).OfType<LetThroughView>()] : [],
        };
    }

    private ImmutableArray<string> Names(Stop stop, bool heard) =>
        [.. stop.Told.Where(t => t.Value is not null == heard).Select(t => _shop.NameOf(t.Key))];

    private string Releasers(Stop stop)
    {
        var able = _shop.People.Values.Where(p => !p.Left && MayPost.May<ReleaseStop>(p.Position) && !Looks.IsOwnWork(_shop, stop, p.Id)).Select(p => p.Name).ToArray();
        return able.Length == 0 ? "Nobody in this shop may release it: all who could were on the work it stopped." : $"{string.Join(" or ", able)} releases it.";
    }

    private IEnumerable<CarBoard> Cars(Stop stop) => stop.Scope switch
    {
        StopScope.Shop => _shop.Cars.Values,
        StopScope.Place => _shop.Cars.Values.Where(c => c.Place == stop.Place),
        _ => _shop.Cars.Values.Where(c => c.Id == stop.Car),
    };
}
