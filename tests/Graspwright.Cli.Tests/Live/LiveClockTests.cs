using System.Text;
using Graspwright.Cli.Live;
using Graspwright.Workshop.Mould;

namespace Graspwright.Cli.Tests.Live;

/// <summary>The live clock on a time of its own: nothing waits.</summary>
public sealed class LiveClockTests
{
    private static readonly SpokenLine[] Lines = [new(0, "Mix now.", "MIX"), new(70, "Roll.", "ROLL"), new(300, "Hands off.", "HANDS OFF")];

    [Fact]
    public void Says_every_line_when_it_is_due_and_forgets_the_run_at_its_end()
    {
        using Folder folder = new();
        ManualTime time = new();
        Bench bench = new(folder["clock.json"], time);
        bench.Clock().Run(Lines, lead: 10, again: false);
        Assert.Equal([("Ready. Mixing begins in 10 seconds. Both hands in the putty.", 0), ("Mix now.", 10), ("Roll.", 80), ("Hands off.", 310)], bench.Spoken);
        Assert.False(File.Exists(folder["clock.json"]));
        Assert.Contains("\a", bench.Answers, StringComparison.Ordinal);
        Assert.Contains(" 1:10  Roll.", bench.Answers, StringComparison.Ordinal);
    }

    [Fact]
    public void Goes_on_after_a_crash_where_the_time_is_not_where_it_stopped()
    {
        using Folder folder = new();
        ManualTime time = new();
        Bench first = new(folder["clock.json"], time) { CrashAfter = 2 };
        Assert.Throws<TimeoutException>(() => first.Clock().Run(Lines, lead: 10, again: false));
        ClockRun kept = new ClockState(folder["clock.json"]).Read()!;
        Assert.Equal((1, Lines.Length), (kept.Said + 1, kept.Lines.Count)); // the line of the crash was not written down as said
        time.Pass(120);
        Bench second = new(folder["clock.json"], time);
        second.Clock().Run(Lines, lead: 10, again: false);
        Assert.Equal(("The clock goes on. 2 minutes 0 seconds since mixing began.", 130), second.Spoken[0]);
        Assert.Equal(("Roll.", 130), second.Spoken[1]);
        Assert.Equal(("Hands off.", 310), second.Spoken[2]);
        Assert.Contains("missed at  0:00: Mix now.", second.Answers, StringComparison.Ordinal);
    }

    [Fact]
    public void Keeps_the_plan_it_began_with_and_says_that_the_file_changed()
    {
        using Folder folder = new();
        ManualTime time = new();
        Assert.Throws<TimeoutException>(() => new Bench(folder["clock.json"], time) { CrashAfter = 2 }.Clock().Run(Lines, lead: 0, again: false));
        Bench second = new(folder["clock.json"], time);
        second.Clock().Run([new(0, "Other.", "X")], lead: 0, again: false);
        Assert.Contains("something else", second.Talk, StringComparison.Ordinal);
        Assert.Equal("Hands off.", second.Spoken[^1].Text);
    }

    [Fact]
    public void Begins_anew_when_asked_or_when_the_old_one_is_long_over()
    {
        using Folder folder = new();
        ManualTime time = new();
        new ClockState(folder["clock.json"]).Write(new(time.GetUtcNow().AddSeconds(-60), 1, Lines));
        Bench again = new(folder["clock.json"], time);
        again.Clock().Run(Lines, lead: 0, again: true);
        Assert.StartsWith("Ready.", again.Spoken[0].Text, StringComparison.Ordinal);
        new ClockState(folder["clock.json"]).Write(new(time.GetUtcNow().AddDays(-7), 1, Lines));
        Bench stale = new(folder["clock.json"], time);
        stale.Clock().Run(Lines, lead: 0, again: false);
        Assert.Contains("has ended", stale.Talk, StringComparison.Ordinal);
        Assert.StartsWith("Ready.", stale.Spoken[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Refuses_a_file_that_is_no_clock_and_a_clock_from_the_future()
    {
        using Folder folder = new();
        ManualTime time = new();
        folder.Write("clock.json", "{ \"format\": 1 }");
        Assert.Contains("no clock under way", Assert.Throws<BadInputException>(() => new Bench(folder["clock.json"], time).Clock().Run(Lines, 0, again: false)).Errors[0].Found, StringComparison.Ordinal);
        new ClockState(folder["clock.json"]).Write(new(time.GetUtcNow().AddHours(2), 0, Lines));
        Assert.Contains("future", Assert.Throws<BadInputException>(() => new Bench(folder["clock.json"], time).Clock().Run(Lines, 0, again: false)).Errors[0].Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Draws_the_time_in_five_lines()
    {
        string[] lines = BigDigits.Write(125).TrimEnd('\n').Split('\n');
        Assert.Equal(5, lines.Length);
        Assert.Equal("   ███       ███  ███", lines[0]); // 2:05
        Assert.Equal("     █   █   █ █  █", lines[1]);
        Assert.Equal(lines[0], lines[4]);
    }

    [Theory]
    [InlineData("--state", "clock.json")]
    [InlineData("--lead", "5")]
    public void Options_of_the_live_clock_need_it(string option, string value)
    {
        Started run = Started.Run("clock", Started.Demo, option, value);
        Assert.Equal(2, run.Code);
        Assert.Contains("no clock runs", run.Talk, StringComparison.Ordinal);
    }

    [Fact]
    public void A_program_that_cannot_speak_is_refused_before_the_hands_are_in_it()
    {
        using Folder folder = new();
        Started run = Started.Run("clock", Started.Demo, "--run", "--state", folder["c.json"], "--say", folder["no-such-program"]);
        Assert.Equal(2, run.Code);
        Assert.Contains("cannot be started", run.Talk, StringComparison.Ordinal);
    }

    /// <summary>A clock with what it said and when.</summary>
    private sealed class Bench(string state, ManualTime time)
    {
        private readonly StringBuilder _answers = new(), _talk = new();
        private readonly DateTimeOffset _from = ManualTime.Start;

        public int CrashAfter { get; init; } = int.MaxValue;

        public List<(string Text, int At)> Spoken { get; } = [];

        public string Answers => _answers.ToString();

        public string Talk => _talk.ToString();

        public LiveClock Clock() => new(time, new(new StringWriter(_answers), new StringWriter(_talk)), new(state), Speak, redraws: false);

        private void Speak(string line)
        {
            Spoken.Add((line, (int)Math.Round((time.GetUtcNow() - _from).TotalSeconds)));
            if (Spoken.Count >= CrashAfter)
            {
                throw new TimeoutException("as if the machine lost its power");
            }
        }
    }

    /// <summary>A time that passes only when somebody waits for it, at once.</summary>
    private sealed class ManualTime : TimeProvider
    {
        private DateTimeOffset _now = Start;

        public static DateTimeOffset Start { get; } = new(2026, 4, 1, 9, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => _now;

        public void Pass(double seconds) => _now = _now.AddSeconds(seconds);

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            if (dueTime > TimeSpan.Zero)
            {
                _now += dueTime;
                ThreadPool.QueueUserWorkItem(_ => callback(state));
            }

            return new Fired();
        }

        private sealed class Fired : ITimer
        {
            public bool Change(TimeSpan dueTime, TimeSpan period) => true;

            public void Dispose()
            {
            }

            public ValueTask DisposeAsync() => default;
        }
    }
}
