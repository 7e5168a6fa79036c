using Graspwright.Page.Hands;
using Graspwright.Page.Mould;
using Graspwright.Page.Pages;
using Graspwright.Workshop.Mould;

namespace Graspwright.Page.Tests.Mould;

public sealed class ClockKeepingTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 4, 2, 9, 0, 0, TimeSpan.Zero);
    private readonly DemoHand _demo = new();
    private readonly OpenHand _open;
    private readonly ClockKeeping _clock;

    public ClockKeepingTests()
    {
        _open = new(_demo.File, TimeProvider.System);
        _clock = new(_open);
    }

    public void Dispose() => _demo.Dispose();

    [Fact]
    public void One_touch_begins_it_with_a_countdown_and_a_second_changes_nothing()
    {
        Assert.True(Act("start", Now, ("lead", "10"))!.IsDone);
        ClockRun run = _clock.Run(Now)!;
        Assert.Equal(Now.AddSeconds(10), run.StartedUtc);
        Assert.True(Act("start", Now.AddSeconds(5), ("lead", "10"))!.IsDone);
        Assert.Equal(run.StartedUtc, _clock.Run(Now)!.StartedUtc);
    }

    [Fact]
    public void It_goes_on_from_the_file_that_the_terminal_uses()
    {
        Act("start", Now);
        Assert.True(Act("said", Now.AddSeconds(60), ("said", "2"))!.IsDone);
        (ClockRun? kept, _) = ClockRunText.Read(File.ReadAllText(ClockRunText.Beside(_demo.File)), "clock");
        Assert.Equal(2, kept!.Said);
        Assert.True(Act("said", Now.AddSeconds(61), ("said", "1"))!.IsDone); // an older page says less: what was said stays said
        Assert.Equal(2, new ClockKeeping(new(_demo.File, TimeProvider.System)).Run(Now.AddSeconds(61))!.Said);
    }

    [Fact]
    public void Stopped_or_long_over_it_is_gone()
    {
        Act("start", Now);
        Assert.Null(_clock.Run(Now.AddDays(1)));
        Act("stop", Now);
        Assert.Null(_clock.Run(Now));
    }

    private Outcome? Act(string what, DateTimeOffset at, params (string Name, string Value)[] sent) =>
        _clock.Act(what, new([.. sent.Select(s => KeyValuePair.Create(s.Name, s.Value))], null), new(_open, new(_open, new(TimeProvider.System)), PageTable.Find("clock")!.Value.Page, new Dictionary<string, string>(), at));
}
