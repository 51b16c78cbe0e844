using JobBoard.Domain.Items;

namespace JobBoard.Domain.Tests.Items;

/// <summary>Where on the car words are.</summary>
public class SpotTests
{
    [Theory]
    [InlineData("front, left", Along.Front, Side.Left)]
    [InlineData("rear, left and right", Along.Rear, Side.Across)]
    [InlineData("Rear, RIGHT", Along.Rear, Side.Right)]
    [InlineData("middle, rear of the engine", Along.Middle, Side.Across)]
    [InlineData("middle and tank space", Along.Middle, Side.Across)]
    [InlineData("left, rear", Along.Rear, Side.Left)]
    [InlineData("front to rear", Along.Whole, Side.Across)]
    [InlineData("all four corners", Along.Whole, Side.Across)]
    [InlineData("whole car", Along.Whole, Side.Across)]
    [InlineData("cabin", Along.Middle, Side.Across)]
    [InlineData("on the bench", Along.Elsewhere, Side.Across)]
    [InlineData("", Along.Elsewhere, Side.Across)]
    [InlineData(", ;", Along.Elsewhere, Side.Across)]
    public void Words_say_where(string words, Along along, Side side) => Assert.Equal(new Spot(along, side), Spot.Of(words));

    [Fact]
    public void A_walk_goes_front_to_back_and_left_to_right()
    {
        string[] walk = ["front, left", "front", "front, right", "middle", "rear, left", "rear, right", "whole car", "on the bench"];

        Assert.Equal(walk, walk.Reverse().OrderBy(Spot.Of));
    }
}
