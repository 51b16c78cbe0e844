using System.Globalization;

namespace JobBoard.Scheduling.Tests;

/// <summary>Small plans on a plain shop's week: Monday to Friday, 8:00 to 16:00 in Berlin, from a Monday's opening.</summary>
internal static class ShopPlan
{
    public const long Hour = 3600;

    public static WorkCalendar Shop { get; } = new(
        TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin"),
        Enumerable.Range(1, 5).Select(day => new WeeklyOpening((DayOfWeek)day, new OpenSpan(TimeSpan.FromHours(8), TimeSpan.FromHours(16)))));

    public static long Monday { get; } = At("2026-03-02T08:00+01:00");

    public static long At(string text) => DateTimeOffset.Parse(text, CultureInfo.InvariantCulture).ToUnixTimeSeconds();

    public static (TaskTimes Times, Dates Dates) Plan(int[] hours, params Link[] links) => Plan(hours, Monday, links);

    public static (TaskTimes Times, Dates Dates) Plan(int[] hours, long now, params Link[] links)
    {
        var times = new TaskTimes(Network.Build(hours.Length, links));
        for (var task = 0; task < hours.Length; task++)
            times.SetWork(task, hours[task] * Hour);
        return (times, CriticalPath.Compute(times, Shop, now));
    }
}
