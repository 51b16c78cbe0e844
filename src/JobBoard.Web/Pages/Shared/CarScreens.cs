using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Web.Pages.Cars.KeyCheck;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.Shared;

/// <summary>The screens of one car, beside those of the shop.</summary>
/// <param name="Car">What people call the car.</param>
/// <param name="Screens">Those this reader may open, in order.</param>
public sealed record CarScreens(string Car, ImmutableArray<TopBarScreen> Screens)
{
    /// <summary>The screens of a car for somebody of this position.</summary>
    public static CarScreens Of(CarBoard car, Position position) => new(car.Name, [.. All(car, position)]);

    private static IEnumerable<TopBarScreen> All(CarBoard car, Position position)
    {
        var path = $"/cars/{car.Id}";
        yield return new(path, "The work");
        yield return new($"{path}/when-ready", "When ready");
        yield return new($"{path}/items", "Items");
        yield return new($"{path}/readings", "Readings");
        if (MayPost.May<RevisePlan>(position)) yield return new($"{path}/plan", "Plan");
        if (KeyCheckMapping.HoldOf(car) is not null) yield return new($"{path}/key-check", "Key check");
        yield return new($"{path}/paper", "On paper");
        if (MayPost.May<AskCustomer>(position)) yield return new($"{path}/customer", "For the customer");
    }
}
