namespace JobBoard.Domain.Plans.Faults;

/// <summary>Needs that the chain of changes does not meet.</summary>
internal static class NeedFaults
{
    private const string OfShop = "shop/";

    /// <summary>Whether the need is of a thing of the shop, not of the car.</summary>
    public static bool IsOfShop(Need need) => need.Item.StartsWith(OfShop, StringComparison.Ordinal);

    public static IEnumerable<Found> Order(PlanCheck check) =>
        from n in OfCar(check)
        where !Changes(n.Task, n.Item)
        from changer in check.Index.Changers(n.Item.Id)
        where !check.AreOrdered(n.Task.Id, changer.Task.Id)
        let isAfter = IsAfter(check, n.Task, n.Need, changer)
        select Found.Linked(
            check,
            n.At,
            $"{check.Say(n.Task.Id)} needs {n.Item.Name} {Either(n.Need)}, and {check.Say(changer.Task.Id)}, which changes it, comes neither before nor after.",
            isAfter ? n.Task.Id : changer.Task.Id,
            isAfter ? changer.Task.Id : n.Task.Id);

    public static IEnumerable<Found> Unmet(PlanCheck check) =>
        from n in OfCar(check)
        let over = Changes(n.Task, n.Item) ? Own(n.Task, n.Item) : check.Over(n.Item, n.Task.Id)
        where over is not null && !n.Need.Conditions.Contains(over.Value.Condition)
        let left = over.Value.By is { } task ? $"{check.Say(task)} leaves it" : "it is by then"
        select new Found(
            n.At,
            $"{check.Say(n.Task.Id)} needs {n.Item.Name} {Either(n.Need)}, but {left} {over.Value.Condition}.",
            Source(check, n.Need, n.Item, n.Task) is { } source ? $"move {check.Say(n.Task.Id)} after {check.Say(source)} and before the next change" : null);

    public static IEnumerable<Found> Shop(PlanCheck check) =>
        from t in check.Tasks
        from n in PlanCheck.Each(t.Task.Needs, t.At + ".needs")
        where IsOfShop(n.Value)
        let item = check.Shop.Items.FirstOrDefault(i => OfShop + i.Id == n.Value.Item)
        where item is null || !n.Value.Conditions.All(item.Conditions.Contains)
        select item is null
            ? new Found(n.At + ".item", $"The shop has nothing \"{n.Value.Item}\", which {check.Say(t.Task.Id)} needs {Either(n.Value)}.", "add it to the shop, or take the need out")
            : new Found(n.At + ".conditions", $"{item.Name} is never {Either(n.Value)}, which {check.Say(t.Task.Id)} needs.", $"write one of {string.Join(", ", item.Conditions)}");

    private static IEnumerable<(PlanTask Task, Need Need, Item Item, string At)> OfCar(PlanCheck check) =>
        from t in check.Tasks
        from n in PlanCheck.Each(t.Task.Needs, t.At + ".needs")
        let item = check.Index.Item(n.Value.Item)
        where item is not null && !n.Value.Conditions.IsEmpty
        select (t.Task, n.Value, item, n.At);

    /// <summary>Whether the need suggests itself after the change: only what it leaves will do, or both will and it is later in the plan.</summary>
    private static bool IsAfter(PlanCheck check, PlanTask task, Need need, (PlanTask Task, Change Change) changer)
    {
        var (left, found) = (need.Conditions.Contains(changer.Change.To), need.Conditions.Contains(changer.Change.From));
        return left == found ? check.IsListedBefore(changer.Task.Id, task.Id) : left;
    }

    private static bool Changes(PlanTask task, Item item) => task.Changes.Any(c => c.Item == item.Id);

    /// <summary>What a task changes itself it finds as its own change begins.</summary>
    private static (string Condition, string? By)? Own(PlanTask task, Item item) =>
        (task.Changes.First(c => c.Item == item.Id).From, null);

    private static string? Source(PlanCheck check, Need need, Item item, PlanTask task) =>
        check.Index.Changers(item.Id).Select(c => (c.Task.Id, c.Change.To))
            .FirstOrDefault(c => c.Id != task.Id && need.Conditions.Contains(c.To)).Id;

    private static string Either(Need need) => string.Join(" or ", need.Conditions);
}
