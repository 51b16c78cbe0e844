using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Items;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Bay;
using JobBoard.Web.Pages.Cars.Car;
using JobBoard.Web.Pages.Floor;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.CarTask;

/// <summary>Makes what the page of one task shows one person.</summary>
public sealed class CarTaskMapping
{
    private readonly Picture _picture;
    private readonly CarBoard _car;
    private readonly PlanTask _task;
    private readonly Person _me;
    private readonly PlanIndex _index;

    private CarTaskMapping(Picture picture, CarBoard car, PlanTask task, Person me) =>
        (_picture, _car, _task, _me, _index) = (picture, car, task, me, PlanIndex.Of(car.Plan));

    /// <summary>What is about one task, written <c>CAR:TASK</c>.</summary>
    public static string Subject(string car, string task) => $"{car}:{task}";

    /// <summary>A task for a person; an empty view when car, task or person is gone.</summary>
    public static CarTaskView Of(Picture picture, string personId, string subject)
    {
        var (carId, taskId) = subject.Split(':') is [var c, var t] ? (c, t) : ("", "");
        var gone = new CarTaskView { At = picture.Minute, CarId = carId, TaskId = taskId };
        if (!picture.Shop.Cars.TryGetValue(carId, out var car) || PlanIndex.Of(car.Plan).Task(taskId) is not { } task) return gone;
        return picture.Shop.People.TryGetValue(personId, out var me) ? new CarTaskMapping(picture, car, task, me).View(gone) : gone;
    }

    private CarTaskView View(CarTaskView start)
    {
        var stage = new CarStageMapping(_picture, _car);
        var q = stage.Question(_task);
        var inHand = q.State.Status == WorkStatus.InHand;
        return start with
        {
            Node = stage.Node(_task),
            Stage = _car.Plan.Stages.FirstOrDefault(s => s.Id == _task.Stage)?.Name ?? "",
            Cautions = [.. Cautions()],
            Steps = _task.Steps,
            Needs = [.. _task.Needs.Select(Need)],
            Changes = [.. _task.Changes.Select(c => $"{_index.Item(c.Item)?.Name ?? c.Item}: {string.Join(", then ", c.Path)}")],
            Parts = [.. _task.Parts.Select(Part)],
            SignOffWaitsOn = inHand ? [.. Looks.MissingForSignOff(q).Select(w => BayMapping.Wait(_picture, w))] : [],
            After = [.. _index.LinksInto(_task.Id).Select(l => Link(l, l.After))],
            Before = [.. _index.LinksFrom(_task.Id).Select(l => Link(l, l.Task))],
            Forms = new CarTaskFormMapping(_picture, q, _me).Forms(),
        };
    }

    private IEnumerable<CarTaskCaution> Cautions()
    {
        var hazards = _task.Hazards.Select(h => h.Hazard)
            .Concat(_task.Changes.SelectMany(c => (_index.Item(c.Item)?.Dangers ?? []).Where(d => c.Path.Contains(d.Condition)).Select(d => d.Hazard)));
        return hazards.Distinct().Select(h => _picture.Shop.Hazards.GetValueOrDefault(h)).OfType<Domain.Hazards.HazardKind>()
            .Select(h => new CarTaskCaution(FloorMapping.Sign(h.Sign), $"{h.Name}. {h.Caution}".TrimEnd()))
            .Concat(_task.Cautions.Where(c => !BayTexts.LocalCodes.StartsWith(c, StringComparison.Ordinal)).Select(c => new CarTaskCaution(SafetySignKind.W001, c)));
    }

    private string Need(Need need)
    {
        var asked = string.Join(" or ", need.Conditions);
        if (need.Item.StartsWith("shop/", StringComparison.Ordinal))
        {
            var thing = _picture.Shop.Items.GetValueOrDefault(need.Item[5..]);
            return $"{thing?.Name ?? need.Item}: {asked}{Otherwise(need, thing?.Condition)}";
        }

        return $"{_index.Item(need.Item)?.Name ?? need.Item}: {asked}{Otherwise(need, _car.Items.GetValueOrDefault(need.Item)?.Condition)}";
    }

    private static string Otherwise(Need need, string? now) => now is not null && need.Conditions.Contains(now) ? "" : $" (it is {now ?? "not known"})";

    private string Part(string id)
    {
        var name = _car.Plan.Parts.FirstOrDefault(p => p.Id == id)?.Name ?? id;
        return _car.Parts.GetValueOrDefault(id)?.Status switch
        {
            PartStatus.CheckedRight => $"{name}: checked right",
            PartStatus.Arrived => $"{name}: arrived, to be checked",
            PartStatus.Ordered => $"{name}: ordered",
            PartStatus.Wrong => $"{name}: wrong",
            _ => $"{name}: not ordered",
        };
    }

    private CarTaskLink Link(Link link, string other) => new(link, _index.NameOf(other), other, _index.Task(other) is not null, LinkWords.Of(link));
}
