namespace JobBoard.Scheduling;

/// <summary>
/// What is known of each task of a network: how much work it is, whether it is in hand or signed off, the earliest it may
/// start, a date given, and what it rests on that nobody can date. Instants are Unix seconds (bare units under
/// <see cref="WorkCalendar.NeverCloses"/>), work is seconds of shop hours.
/// </summary>
/// <remarks>Filled for one computation; not to be changed while the <see cref="Dates"/> made from it are in use.</remarks>
public sealed class TaskTimes
{
    internal const byte IsLimited = 1;
    internal const byte IsInHand = 2;
    internal const byte IsSignedOff = 4;
    internal const byte IsNotKnown = 8;

    /// <param name="network">The tasks; all begin as not started, of zero length.</param>
    public TaskTimes(Network network)
    {
        ArgumentNullException.ThrowIfNull(network);
        Network = network;
        Work = new long[network.TaskCount];
        Marks = new byte[network.TaskCount];
    }

    /// <summary>The network this belongs to.</summary>
    public Network Network { get; }

    /// <summary>An instant by which every task should be finished, if a date was given; it can only tighten late dates.</summary>
    public long? DateGiven { get; set; }

    internal long[] Work { get; }

    internal byte[] Marks { get; }

    internal long TotalWork { get; private set; }

    internal bool AnyNotKnown { get; private set; }

    internal long[]? Starts { get; private set; }

    internal long[]? Finishes { get; private set; }

    internal long[]? Earliest { get; private set; }

    internal long[]? Latest { get; private set; }

    internal int[]? Reasons { get; private set; }

    /// <summary>The task's work in seconds of shop hours, 0 for a hold point or milestone.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or beyond <see cref="Network.LongestTime"/>.</exception>
    public void SetWork(int task, long work)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(work);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(work, Network.LongestTime);
        ref var at = ref Work[Network.PlaceOf[task]];
        TotalWork += work - at;
        at = work;
    }

    /// <summary>The task was started and has this much work left, counted from now; nothing holds its start any more.</summary>
    public void SetInHand(int task, long start, long remaining)
    {
        SetWork(task, remaining);
        var place = Mark(task, IsInHand);
        (Starts ??= new long[Work.Length])[place] = start;
    }

    /// <summary>The task is signed off; nothing moves it any more.</summary>
    public void SetSignedOff(int task, long start, long finish)
    {
        SetWork(task, 0);
        var place = Mark(task, IsSignedOff);
        (Starts ??= new long[Work.Length])[place] = start;
        (Finishes ??= new long[Work.Length])[place] = finish;
    }

    /// <summary>The task (or what is left of it) waits at least until this instant, as for a part.</summary>
    public void SetNotBefore(int task, long instant)
    {
        var place = Mark(task, IsLimited);
        (Earliest ??= Filled(long.MinValue))[place] = instant;
    }

    /// <summary>The task should be finished by this instant.</summary>
    public void SetDateGiven(int task, long instant)
    {
        var place = Mark(task, IsLimited);
        (Latest ??= Filled(long.MaxValue))[place] = instant;
    }

    /// <summary>The task waits on something that nobody can date; it and what comes after it have no dates.</summary>
    /// <param name="task">The task.</param>
    /// <param name="reason">The caller's own number for what it rests on, 0 or more.</param>
    public void SetNotKnown(int task, int reason)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(reason);
        var place = Mark(task, IsNotKnown);
        AnyNotKnown = true;
        if (Reasons is null)
        {
            Reasons = new int[Work.Length];
            Array.Fill(Reasons, -1);
        }

        Reasons[place] = reason;
    }

    private int Mark(int task, byte mark)
    {
        var place = Network.PlaceOf[task];
        Marks[place] |= mark;
        return place;
    }

    private long[] Filled(long value)
    {
        var filled = new long[Work.Length];
        Array.Fill(filled, value);
        return filled;
    }
}
