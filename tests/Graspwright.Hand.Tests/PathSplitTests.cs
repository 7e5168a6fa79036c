namespace Graspwright.Hand.Tests;

public sealed class PathSplitTests
{
    [Theory]
    [InlineData("crank.fulcrum.x", "crank|fulcrum|x")]
    [InlineData("fingers.index.segments[1]", "fingers|index|segments|#1")]
    [InlineData("locks.\"hold ring.and little\".ring", "locks|hold ring.and little|ring")]
    [InlineData("jobs.\"a \\\"full\\\" mug\\\\\".load", "jobs|a \"full\" mug\\|load")]
    [InlineData("wearer.capacity[12][2]", "wearer|capacity|#12|#2")]
    [InlineData("a-b_9", "a-b_9")]
    public void Takes_a_path_apart(string path, string steps)
    {
        Assert.True(HandPath.TrySplit(path, out IReadOnlyList<PathStep>? found));
        Assert.Equal(steps, string.Join('|', found.Select(s => s.Index > 0 ? $"#{s.Index}" : s.Key)));
    }

    [Theory]
    [InlineData("")]
    [InlineData(".crank")]
    [InlineData("crank.")]
    [InlineData("crank..x")]
    [InlineData("crank x")]
    [InlineData("crank.[1]")]
    [InlineData("segments[]")]
    [InlineData("segments[1")]
    [InlineData("segments[1234567]")]
    [InlineData("segments[1]x")]
    [InlineData("locks.\"open")]
    [InlineData("locks.\"open\\\"")]
    [InlineData("[1]")]
    [InlineData("über")]
    public void Refuses_what_is_no_path(string path) => Assert.False(HandPath.TrySplit(path, out _));
}
