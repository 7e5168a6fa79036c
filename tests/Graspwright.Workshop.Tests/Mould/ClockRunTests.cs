using Graspwright.Workshop.Mould;

namespace Graspwright.Workshop.Tests.Mould;

public sealed class ClockRunTests
{
    private static readonly DateTimeOffset Start = new(2026, 4, 1, 9, 0, 0, TimeSpan.Zero);
    private static readonly ClockRun Run = new(Start, 0, [new(0, "a", "A"), new(60, "b", "B"), new(90, "c", "C")]);

    [Fact]
    public void Gives_the_lines_that_are_due_and_were_not_said()
    {
        Assert.Empty(Run.Due(Start.AddSeconds(-1)));
        Assert.Equal(["a"], Run.Due(Start).Select(l => l.Text));
        Assert.Equal(["b"], (Run with { Said = 1 }).Due(Start.AddSeconds(75)).Select(l => l.Text));
        Assert.Equal(["a", "b", "c"], Run.Due(Start.AddHours(1)).Select(l => l.Text));
    }

    [Fact]
    public void Knows_when_the_next_is_due_and_when_it_is_over()
    {
        Assert.Equal(10, Run.UntilNext(Start.AddSeconds(-10)));
        Assert.Equal(15, (Run with { Said = 2 }).UntilNext(Start.AddSeconds(75)));
        Assert.True((Run with { Said = 3 }).Done);
        Assert.False(Run.Stale(Start.AddSeconds(90 + 3599)));
        Assert.True(Run.Stale(Start.AddSeconds(90 + 3601)));
    }
}
