namespace JobBoard.Scheduling.Tests;

public class NetworkTests
{
    [Fact]
    public void Ring_of_tasks_is_named()
    {
        var ring = Assert.Throws<CycleException>(() => Network.Build(5, [new Link(1, 0), new Link(2, 1), new Link(3, 2), new Link(1, 3), new Link(4, 3)]));

        Assert.Equal([1, 2, 3], ring.Tasks.Order());
        Assert.Contains("2", ring.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Task_after_itself_is_a_ring_of_one()
    {
        Assert.False(Network.TryBuild(2, [new Link(1, 1)], out var network, out var ring));

        Assert.Null(network);
        Assert.Equal([1], ring);
    }

    [Fact]
    public void Link_to_a_task_that_is_not_there_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Network.Build(2, [new Link(2, 0)]));
}
