namespace JobBoard.Scheduling;

/// <content>What the tasks without dates rest on.</content>
internal sealed partial class DatePasses
{
    private void FindReasons()
    {
        var reasons = new int[work.Length];
        for (var place = 0; place < work.Length; place++)
            reasons[place] = Reason(place, reasons);
        for (var place = 0; place < work.Length; place++)
        {
            if (into.Free[place] > 0 && HasSuccessorNotKnown(place, reasons))
                into.Free[place] = Never;
        }

        into.Reasons = reasons;
    }

    /// <summary>The least of the reasons that reach the task, -1 if it has dates.</summary>
    private int Reason(int place, int[] reasons)
    {
        if ((special[place] & TaskTimes.IsSignedOff) != 0)
            return -1;
        var reason = (special[place] & TaskTimes.IsNotKnown) != 0 ? times.Reasons![place] : int.MaxValue;
        var rows = network.Before;
        for (var k = rows.First[place]; k < rows.First[place + 1]; k++)
        {
            var before = reasons[LinkRows.Place(rows.Row[k])];
            if (before >= 0 && Reaches(rows.Row[k], place))
                reason = Math.Min(reason, before);
        }

        return reason == int.MaxValue ? -1 : reason;
    }

    /// <summary>Whether the link passes on that its source is not known: a start that has happened neither gives nor takes it.</summary>
    private bool Reaches(long row, int place)
    {
        var fromStart = (row & LinkRows.OtherFinish) == 0;
        var toStart = (row & LinkRows.AtFinish) == 0;
        var started = special[LinkRows.Place(row)] & TaskTimes.IsInHand;
        return !(fromStart && started != 0) && !(toStart && (special[place] & TaskTimes.IsInHand) != 0);
    }

    private bool HasSuccessorNotKnown(int place, int[] reasons)
    {
        var rows = network.Behind;
        for (var k = rows.First[place]; k < rows.First[place + 1]; k++)
        {
            if (reasons[LinkRows.Place(rows.Row[k])] >= 0)
                return true;
        }

        return false;
    }
}
