using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;
using JobBoard.Shop.Dates;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.Items;

/// <summary>Makes the walk round a car.</summary>
internal sealed class ItemsMapping(Picture picture, CarBoard car)
{
    private readonly PlanIndex _index = PlanIndex.Of(car.Plan);
    private readonly CarDates _dates = picture.Dates.Of(picture.Shop, car, picture.Now);

    public ItemsView View()
    {
        var walk = car.Plan.Items.Where(i => car.Items.ContainsKey(i.Id)).Select(i => (Spot.Of(i.Where).Along, Item: Item(i)))
            .GroupBy(i => i.Along, i => i.Item).OrderBy(g => g.Key)
            .Select(g => new WalkStretch(g.Key, StretchName(g.Key), [.. g.OrderBy(i => i.Side)])).ToImmutableArray();
        return new()
        {
            CarId = car.Id,
            At = picture.Minute,
            Stretches = walk,
            Forgotten = [.. walk.SelectMany(s => s.Items).Where(i => !i.IsForTheRoad && i.PutsRight is null)],
        };
    }

    /// <summary>A stretch of the walk in words.</summary>
    public static string StretchName(Along along) => along switch
    {
        Along.Front => "Front",
        Along.Middle => "Middle",
        Along.Rear => "Rear",
        Along.Whole => "All along the car",
        _ => "Elsewhere",
    };

    private WalkedItem Item(Item item)
    {
        var state = car.Items[item.Id];
        var open = _index.Changers(item.Id).Where(c => !car.Tasks[c.Task.Id].Counts || car.Tasks[c.Task.Id].Status == WorkStatus.InHand).ToArray();
        var changing = open.Where(c => car.Tasks[c.Task.Id].Status == WorkStatus.InHand).Select(c => Task(c.Task)).FirstOrDefault();
        var next = open.Select(c => c.Task).FirstOrDefault(t => car.Tasks[t.Id].Status != WorkStatus.InHand);
        var last = open.LastOrDefault(c => c.Change.To == item.AsForTheRoad).Task;
        return new()
        {
            Id = item.Id,
            Name = item.Name,
            Where = item.Where,
            Side = Spot.Of(item.Where).Side,
            Condition = state.Condition,
            ForTheRoad = item.AsForTheRoad,
            Conditions = item.Conditions,
            Aspects = item.Aspects,
            Since = state.Since == car.TakenInAt ? "since it came in" : $"since {ShopTime.Since(picture.Local(state.Since), picture.Now)}, {picture.Shop.NameOf(state.By)}{By(state)}",
            Changing = changing,
            Next = next is null ? null : Task(next),
            PutsRight = last is null ? null : Task(last),
        };
    }

    private string By(ItemState state) => state.Task is null ? ", outside a task" : $", {_index.NameOf(state.Task)}";

    private WalkTask Task(PlanTask task)
    {
        var state = car.Tasks[task.Id];
        if (state.Status == WorkStatus.InHand) return new(task.Id, task.Name, "in hand, " + ShopTime.Names([.. state.Crew.Select(m => picture.Shop.NameOf(m.Person))]));
        return new(task.Id, task.Name, _dates.Nodes.GetValueOrDefault(task.Id)?.EarlyFinish is { } at ? "earliest " + PlannedTime.Of(picture.Local(at), picture.Now) : "");
    }
}
