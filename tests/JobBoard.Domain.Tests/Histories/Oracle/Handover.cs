namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>What keeps a car from being handed over.</summary>
public static class Handover
{
    /// <summary>Everything still off or temporary, held, lapsed or missing.</summary>
    public static IEnumerable<string> Open(Picture shop, CarPicture car, string handover)
    {
        foreach (var item in car.Plan.Items.Where(i => car.Items[i.Id] != i.AsForTheRoad)) yield return $"{item.Id} is not as for the road";
        foreach (var task in car.Plan.Tasks)
        {
            var done = car.Tasks[task.Id];
            if (done.Status != Domain.Work.WorkStatus.SignedOff) yield return $"{task.Id} is not done";
            if (done.SignedOff is { Missing: true }) yield return $"{task.Id} has lapsed";
            foreach (var reading in task.Readings.Where(r => Waits.Held(r, car.Last(task.Id + "/" + r.Id)))) yield return $"{task.Id}/{reading.Id} is out";
        }

        foreach (var hold in car.Plan.Holds.Where(h => h.Id != handover))
            if (car.Holds[hold.Id].Released is not { Missing: false }) yield return $"{hold.Id} holds";
        foreach (var snag in car.Snags.Where(s => !s.Value)) yield return $"{snag.Key} is open";
        foreach (var question in car.Questions) yield return $"again or not of {question} is open";
        foreach (var (stop, what) in shop.Stops)
            if (what.Car == car.Id || what.Covers(car.Id, "", car.Place)) yield return $"{stop} holds";
        foreach (var danger in car.Standing.Keys) yield return $"{danger} stands";
    }
}
