using Graspwright.Page.Hands;
using Graspwright.Page.Pages;
using Graspwright.Page.Works;

namespace Graspwright.Page.Tests.Works;

public sealed class LongWorksTests
{
    private static readonly LongName Name = new("dig", "The digging", "spades", "changes");

    [Fact]
    public void It_counts_ends_and_tells_of_both()
    {
        using LongWorks works = new(TimeProvider.System);
        List<string> told = [];
        using ManualResetEventSlim ended = new();
        works.Moved += w =>
        {
            lock (told)
            {
                told.Add(w.Goes ? "goes" : "ended");
            }

            if (!w.Goes)
            {
                ended.Set();
            }
        };
        LongWork work = works.Begin(Name, w =>
        {
            w.Count(0, 8);
            w.Count(8, 8);
            return new Told("dig", null, []);
        });
        ended.Wait(TestContext.Current.CancellationToken);
        Assert.False(work.Goes);
        Assert.Equal((8, 8), (work.Done, work.All));
        Assert.Equal("8 of 8 spades", work.Words);
        Assert.Equal("dig", work.Told!.Verb);
        Assert.Contains("goes", told);
        Assert.Equal("ended", told[^1]);
        Assert.Empty(works.Going);
    }

    [Fact]
    public void A_stopped_work_without_a_result_tells_nothing()
    {
        using LongWorks works = new(TimeProvider.System);
        LongWork work = works.Begin(Name, Endless);
        Assert.Same(work, Assert.Single(works.Going));
        work.End();
        Assert.True(work.Wait(Timeout.InfiniteTimeSpan));
        Assert.True(work.StopAsked);
        Assert.Null(work.Told);
    }

    [Fact]
    public void One_of_the_same_key_takes_the_place_of_the_other()
    {
        using LongWorks works = new(TimeProvider.System);
        LongWork first = works.Begin(Name, Endless), second = works.Begin(Name, Endless);
        Assert.True(first.Wait(Timeout.InfiniteTimeSpan));
        Assert.Same(second, works.Find("dig"));
        Assert.True(second.Goes);
    }

    [Fact]
    public void A_fault_is_told_and_not_hidden()
    {
        using LongWorks works = new(TimeProvider.System);
        LongWork work = works.Begin(Name, _ => throw new InvalidOperationException("The spade broke."));
        Assert.True(work.Wait(Timeout.InfiniteTimeSpan));
        Assert.Contains("The spade broke", Assert.Single(work.Told!.Errors).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void The_form_is_not_made_anew_when_the_drive_is_changed_but_when_the_limb_is()
    {
        using DemoHand demo = new();
        using LongWorks works = new(TimeProvider.System);
        OpenHand open = new(demo.File, TimeProvider.System);
        HandAnswers answers = new(open, works);
        LongWork form = answers.Work("form"), changes = answers.Work("changes");
        Assert.True(open.Edit([new("crank.fulcrum.x", "21.4 mm")], "a move").IsDone);
        Assert.Same(form, answers.Work("form"));
        Assert.NotSame(changes, answers.Work("changes"));
        Assert.True(form.Wait(Timeout.InfiniteTimeSpan));
        string before = form.Told!.Json();
        Assert.True(open.Edit([new("form.near_edge", "-63 mm")], "shorter").IsDone);
        LongWork shorter = answers.Work("form");
        Assert.NotSame(form, shorter);
        Assert.True(shorter.Wait(Timeout.InfiniteTimeSpan));
        Assert.NotEqual(before, shorter.Told!.Json());
    }

    private static Told Endless(LongWork work)
    {
        work.Stop.WaitHandle.WaitOne();
        work.Stop.ThrowIfCancellationRequested();
        return new("dig", null, []);
    }
}
