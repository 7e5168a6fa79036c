using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Live;

/// <summary>The clock at the bench: says each line when it is due, rings the bell, shows the time in big figures, needs no hand.</summary>
/// <param name="time">Where the time comes from.</param>
/// <param name="terminal">Where lines go.</param>
/// <param name="state">File in which the run is kept.</param>
/// <param name="speak">Has a line spoken; <see langword="null"/> = printed and rung only.</param>
/// <param name="redraws">Whether the figures are drawn anew every second, as on a screen.</param>
internal sealed class LiveClock(TimeProvider time, Terminal terminal, ClockState state, Action<string>? speak, bool redraws)
{
    private const double Tick = 1;
    private const double ClockSetBack = 120;

    /// <summary>Begins, or goes on with, a run and follows it to its end.</summary>
    /// <param name="lines">Lines of the plan.</param>
    /// <param name="lead">Time before mixing begins [s].</param>
    /// <param name="again">Whether a run under way is forgotten.</param>
    public void Run(IReadOnlyList<SpokenLine> lines, double lead, bool again)
    {
        ClockRun run = Begin(lines, lead, again);
        while (!run.Done)
        {
            foreach (SpokenLine line in run.Due(time.GetUtcNow()))
            {
                Say(line.Text, line.Heading, run.Elapsed(time.GetUtcNow()));
                run = run with { Said = run.Said + 1 };
                state.Write(run);
            }

            if (!run.Done)
            {
                Show(run);
                Wait(Math.Min(Tick, Math.Max(0.01, run.UntilNext(time.GetUtcNow()))));
            }
        }

        state.Delete();
    }

    private ClockRun Begin(IReadOnlyList<SpokenLine> lines, double lead, bool again)
    {
        DateTimeOffset now = time.GetUtcNow();
        ClockRun? kept = again ? null : state.Read();
        if (kept is not null && kept.Elapsed(now) < -ClockSetBack)
        {
            throw new BadInputException(new InputError(state.Path, 0, 0, "--run", "a clock that starts in the future: the computer's clock was set back, or the file is from another one", "a clock that was started before now", "Start anew with --again."));
        }

        if (kept is not null && !kept.Done && !kept.Stale(now))
        {
            return GoOn(kept, lines, now);
        }

        if (kept is not null)
        {
            terminal.Talk.WriteLine("The clock kept from before has ended; this is a new one.");
        }

        ClockRun run = new(now.AddSeconds(lead), 0, lines);
        state.Write(run);
        Say($"Ready. Mixing begins in {lead:0} second{(lead == 1 ? "" : "s")}. Both hands in the putty.", "READY", -lead);
        return run;
    }

    private ClockRun GoOn(ClockRun run, IReadOnlyList<SpokenLine> lines, DateTimeOffset now)
    {
        if (!run.Lines.SequenceEqual(lines))
        {
            terminal.Talk.WriteLine("The hand file says something else than when this clock began; it goes on with the plan that it began with. --again starts anew.");
        }

        IReadOnlyList<SpokenLine> missed = run.Due(now);
        foreach (SpokenLine line in missed.SkipLast(1))
        {
            terminal.Answers.WriteLine($"  missed at {Stamp(line.At)}: {line.Text}");
        }

        Say(run.Elapsed(now) < 0 ? "The clock goes on." : $"The clock goes on. {Spoken(run.Elapsed(now))} since mixing began.", "GOES ON", run.Elapsed(now));
        ClockRun caught = run with { Said = run.Said + Math.Max(0, missed.Count - 1) };
        state.Write(caught);
        return caught;
    }

    private void Say(string text, string heading, double elapsed)
    {
        terminal.Answers.Write(redraws ? "\r\u001b[J\a" : "\a"); // clears the figures below, rings the bell
        terminal.Answers.WriteLine($"{Stamp(elapsed)}  {text}");
        if (redraws)
        {
            terminal.Answers.WriteLine($"\n{BigDigits.Spaced(heading)}\n");
        }

        terminal.Answers.Flush();
        speak?.Invoke(text);
    }

    private void Show(ClockRun run)
    {
        if (!redraws)
        {
            return;
        }

        string figures = BigDigits.Write(run.Elapsed(time.GetUtcNow()));
        int rows = figures.Count(c => c == '\n');
        terminal.Answers.Write($"{figures.Replace("\n", "\u001b[K\n", StringComparison.Ordinal)}\u001b[{rows}A");
        terminal.Answers.Flush();
    }

    private void Wait(double seconds) => Task.Delay(TimeSpan.FromSeconds(seconds), time).GetAwaiter().GetResult();

    private static string Stamp(double seconds)
    {
        int whole = (int)Math.Floor(Math.Abs(seconds));
        return $"{(seconds < 0 ? "-" : " ")}{whole / 60:0}:{whole % 60:00}";
    }

    private static string Spoken(double seconds)
    {
        int whole = (int)Math.Floor(seconds);
        return whole < 60 ? $"{whole} seconds" : $"{whole / 60} minutes {whole % 60} seconds";
    }
}
