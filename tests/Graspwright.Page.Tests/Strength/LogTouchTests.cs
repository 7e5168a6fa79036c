using Graspwright.Page.Hands;
using Graspwright.Page.Strength;
using Graspwright.Workshop.Log;

namespace Graspwright.Page.Tests.Strength;

public sealed class LogTouchTests : IDisposable
{
    private static readonly DateOnly Today = new(2026, 4, 2);
    private readonly DemoHand _demo = new();
    private readonly OpenHand _open;
    private readonly LogTouch _touch;

    public LogTouchTests()
    {
        _open = new(_demo.File, TimeProvider.System);
        _touch = new(_open);
    }

    private string Log => Path.Combine(_demo.Folder, "parts-log.csv");

    public void Dispose() => _demo.Dispose();

    [Fact]
    public void A_break_ends_the_part_and_fits_one_of_its_kind()
    {
        string[] before = File.ReadAllLines(Log);
        LogEntry entry = Fitted();
        Assert.Empty(_touch.Note(_open.State.Hand!, entry.Line, before[entry.Line - 1], "broke", "fell, on the slip", Today).Errors.Select(e => e.Found));
        string[] after = File.ReadAllLines(Log);
        Assert.Equal(before.Length + 1, after.Length);
        Assert.EndsWith("2026-04-02,broke,fell; on the slip", after[entry.Line - 1], StringComparison.Ordinal);
        Assert.Equal($"{entry.Part},{entry.Position},{entry.Material},{entry.Revision},2026-04-02,2026-04-02,,,", after[^1]);
        Assert.Equal(before.Where((_, i) => i != entry.Line - 1), after.Where((_, i) => i != entry.Line - 1).SkipLast(1));
    }

    [Fact]
    public void A_line_that_changed_meanwhile_is_left_alone()
    {
        string before = File.ReadAllText(Log);
        Assert.False(_touch.Note(_open.State.Hand!, Fitted().Line, "finger,other", "whole", "", Today).IsDone);
        Assert.Equal(before, File.ReadAllText(Log));
    }

    [Fact]
    public void All_seen_whole_touches_every_fitted_part_and_no_other()
    {
        Assert.True(_touch.AllWhole(_open.State.Hand!, Today).IsDone);
        LogReading log = LogFile.Read(_open.State.Hand!, _demo.File).Log!;
        Assert.All(log.Entries.Where(e => e.How == Ending.None), e => Assert.Equal(Today, e.LastSeenWhole));
        Assert.DoesNotContain(log.Entries.Where(e => e.How != Ending.None), e => e.LastSeenWhole == Today);
    }

    [Fact]
    public void A_day_before_the_part_was_fitted_is_refused()
    {
        string before = File.ReadAllText(Log);
        LogEntry entry = Fitted();
        Assert.False(_touch.Note(_open.State.Hand!, entry.Line, before.Split('\n')[entry.Line - 1], "broke", "", new(2020, 1, 1)).IsDone);
        Assert.Equal(before, File.ReadAllText(Log));
    }

    private LogEntry Fitted() => LogFile.Read(_open.State.Hand!, _demo.File).Log!.Entries.First(e => e.How == Ending.None);
}
