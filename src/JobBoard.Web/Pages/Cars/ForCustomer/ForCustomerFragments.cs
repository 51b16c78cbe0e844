using JobBoard.Web.Live;
using JobBoard.Web.Pages.Customer;

namespace JobBoard.Web.Pages.Cars.ForCustomer;

/// <summary>What the shop tells and asks the customer: dates, questions, notes, how they reach the shop.</summary>
public sealed class ForCustomerFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "for-customer";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Car;

    /// <inheritdoc/>
    public Type Component => typeof(ForCustomerDesk);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = ForCustomerView.Of(picture, audience.Car!, audience.Position!.Value) };
}

/// <summary>The customer's page as they see it, for the shop to look at.</summary>
public sealed class CustomerPreviewFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "customer-preview";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Car;

    /// <inheritdoc/>
    public Type Component => typeof(CustomerScreen);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = CustomerMapping.Of(picture, audience.Car) };
}
