using System.Globalization;
using Graspwright.Hand;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using FingerLock = Graspwright.Hand.FingerLock;

namespace Graspwright.Workshop.Proof;

/// <summary>One test in the vice.</summary>
/// <param name="Key">Key of the test.</param>
/// <param name="Name">What is tested.</param>
/// <param name="How">What to do.</param>
/// <param name="Peak">The greatest load of its kind that this hand makes or meets [<paramref name="Unit"/>].</param>
/// <param name="Unit"><c>N</c> or <c>N·m</c>.</param>
/// <param name="From">Where that load comes from.</param>
/// <param name="SlipMm">Greatest slip allowed over the ten cycles [mm]; NaN where nothing may slip.</param>
public sealed record ViceTest(string Key, string Name, string How, double Peak, string Unit, string From, double SlipMm)
{
    /// <summary>Load to begin with: 1.5 times the peak.</summary>
    public double Low => Proving.LowFactor * Peak;

    /// <summary>Load to end with: twice the peak.</summary>
    public double High => Proving.HighFactor * Peak;

    /// <summary>Mass that weighs as much as the last load [kg]; NaN for a moment.</summary>
    public double HighKilograms => Unit == "N" ? High / 9.80665 : double.NaN;
}

/// <summary>What must hold in a vice before anybody wears the hand: loads from this hand's own peaks.</summary>
public static class Proving
{
    /// <summary>Load to begin with, in peaks. Common practice, no source.</summary>
    public const double LowFactor = 1.5;

    /// <summary>Load to end with, in peaks. Common practice, no source.</summary>
    public const double HighFactor = 2;

    /// <summary>Cycles of each test. Common practice, no source.</summary>
    public const int Cycles = 10;

    /// <summary>Slip allowed over the cycles [mm]. Common practice, no source.</summary>
    public const double Slip = 2;

    /// <summary>Cautions of proving.</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "Never on an arm: a dummy wrist in the vice. What breaks flies: eye protection on, nobody in line with cord, link or weight.",
        "Hang weights a hand's breadth above the floor, over nobody's feet.",
        "Not for rotating machines, winches or anything that can catch the hand. A hand that is caught must break away from the arm; prove that it does, or say in writing that it does not.",
        "Passing this list makes no rated lifting device and shows nothing about wear. Repeat it after each repair, and look for cracks weekly.",
        "Building for somebody else: their consent, a responsible person named, a hand-over in writing, and the local rules for custom devices.",
    ];

    /// <summary>Makes the list.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Name of the hand file, for messages.</param>
    /// <param name="solver">What follows the equilibrium.</param>
    /// <returns>The tests with the answer, or what is wrong.</returns>
    public static (Answer? Answer, IReadOnlyList<ViceTest> Tests, IReadOnlyList<InputError> Errors) Make(HandModel hand, string file, Solver? solver = null)
    {
        ArgumentNullException.ThrowIfNull(hand);
        GripQuestion question = new(hand) { File = file };
        GripResult grips = Gripping.Answer(solver is null ? question : question with { Solver = solver });
        GripCase[] cases = [.. grips.Cases.Where(c => c.Reading.Run.End != RunEnd.NotFollowed)];
        if (cases.Length == 0)
        {
            return (null, [], grips.Errors);
        }

        List<ViceTest> tests = Tests(hand, cases);
        return (Answer(hand, tests), tests, grips.Errors);
    }

    private static List<ViceTest> Tests(HandModel hand, GripCase[] cases)
    {
        var tests = new List<ViceTest>();
        GripCase strongest = cases.MaxBy(c => c.Reading.Run.Closing.Max(r => r[TraceLayout.Grip]))!;
        double grip = strongest.Reading.Run.Closing.Max(r => r[TraceLayout.Grip]);
        (double hooked, string from) = Hooked(hand, grip, Name(strongest));
        tests.Add(new("hooked", "Hooked fingers", "Close on a 25 mm bar and lock, or hold the dummy wrist. Pull the bar out along the fingers, straight and smoothly; after each pull look at hinges, bars and cords.", hooked, "N", from, Slip));
        (double moment, GripCase most) = cases.Select(c => (c.Reading.Run.Closing.Max(r => r[TraceLayout.Tau]), c)).MaxBy(c => c.Item1);
        tests.Add(new("gripped", "Gripped, wrist driven", "Put a hard cylinder in the fingers and turn the dummy wrist with a lever and a scale up to the moment; hold ten seconds. Mark the cylinder and measure how far it crept.", moment, "N·m", $"wrist on the {Name(most)}", Slip));
        tests.Add(new("squeezed", "Finger contacts", "Close on the cylinder with a gauge between its halves; drive until the gauge shows the load. No pad may tear, no segment bend for good.", grip, "N", $"grip on the {Name(strongest)}", Slip));
        foreach ((string key, string name, string how, Func<string, bool> which) in Parts)
        {
            (ForcePeak Peak, GripCase Case)[] found = [.. cases.SelectMany(c => c.Reading.Run.Peaks.Where(p => which(p.Subject)).Select(p => (p, c)))];
            if (found.Length > 0)
            {
                (ForcePeak peak, GripCase on) = found.MaxBy(f => f.Peak.Newtons);
                tests.Add(new(key, name, how, peak.Newtons, "N", $"{peak.Subject} on the {Name(on)}", double.NaN));
            }
        }

        foreach ((FingerLock Lock, double Newtons, GripCase Case) held in Locked(cases).GroupBy(l => l.Lock.Finger, StringComparer.Ordinal).Select(g => g.MaxBy(l => l.Newtons)))
        {
            tests.Add(new($"lock_{held.Lock.Finger}", $"Lock of the {held.Lock.Finger}", "Lock it, take the battery out, and pull its cord to the load: it may not creep. Then free it by hand under the full load, reached with the other hand or a table's edge.", held.Newtons, "N", $"pull {held.Lock.Finger} on the {Name(held.Case)}", 0.5));
        }

        return tests;
    }

    private static readonly (string Key, string Name, string How, Func<string, bool> Which)[] Parts =
    [
        ("pull_link", "Pull link and its pins", "Hang the weight on the link between its own two pins.", s => s == "pull link"),
        ("transfer_link", "Transfer link and its pins", "Hang the weight on the link between its own two pins.", s => s == "transfer link"),
        ("finger_pull", "Finger pulls and their ends", "Hang the weight on each pull, over its own guide.", s => s.StartsWith("pull ", StringComparison.Ordinal) && s != "pull link"),
        ("pin", "Most loaded pin in its bore", "Load the pin in its own bore; the bore may not go oval.", s => !s.EndsWith(" link", StringComparison.Ordinal) && !s.StartsWith("pull ", StringComparison.Ordinal) && s != "rail"),
    ];

    // What hooked fingers meet in use: the heaviest job that hangs on them, moved as hard as it says; else the hand's own greatest grip.
    private static (double Newtons, string From) Hooked(HandModel hand, double grip, string strongest)
    {
        Job? heaviest = hand.Jobs.Where(j => j.As == HeldAs.HookBar).MaxBy(Weight);
        return heaviest is not null && Weight(heaviest) > grip
            ? (Weight(heaviest), $"job {heaviest.Name}")
            : (grip, $"grip on the {strongest}{(heaviest is null ? "; no hook job in the file" : "")}");

        static double Weight(Job j) => j.Load * 9.80665 * (1 + j.Acceleration) + j.Pull;
    }

    private static IEnumerable<(FingerLock Lock, double Newtons, GripCase Case)> Locked(GripCase[] cases) =>
        from c in cases
        where c.Pattern is not null
        from held in c.Pattern!.Locks
        where held.HoldsPull
        let peak = c.Reading.Run.Peaks.FirstOrDefault(p => p.Subject == $"pull {held.Finger}")
        where peak is not null
        select (held, peak.Newtons, c);

    private static string Name(GripCase c) => $"{c.Thing.Name} ({c.Effort.Word()}{(c.Pattern is null ? "" : $", {c.Pattern.Name}")})";

    private static Answer Answer(HandModel hand, List<ViceTest> tests) => new()
    {
        Verb = "proof",
        Hand = hand.Name,
        Sentence = Say($"{tests.Count} tests in the vice before anybody wears it, {Cycles} cycles each from {LowFactor} to {HighFactor} times this hand's own peaks: hooked fingers to {tests[0].High:0} N ({tests[0].HighKilograms:0.0} kg), the wrist to {tests[1].High:0.0} N·m; the held thing may creep {Slip:0} mm in all."),
        Figures =
        [
            .. tests.Select(t =>
            {
                Terms terms = new();
                string peak = terms.Input("peak", t.Peak, t.Unit), factor = terms.Input("factor", HighFactor, "");
                return new Figure($"proof_{t.Key}", $"last load of the test of {t.Name.ToLowerInvariant()}", t.Unit) { Value = t.High, Working = terms.Working($"{factor}·{peak}", "vice-practice") };
            }),
        ],
        Tables =
        [
            new("vice tests", [new("test", ""), new("peak", ""), new("first load", ""), new("last load", ""), new("unit", ""), new("as weight", "kg"), new("cycles", ""), new("slip", "mm"), new("from", "")],
                [.. tests.Select(t => (IReadOnlyList<Cell>)[t.Name, Round(t.Peak), Round(t.Low), Round(t.High), t.Unit, double.IsNaN(t.HighKilograms) ? double.NaN : Math.Round(t.HighKilograms, 1), Cycles, t.SlipMm, t.From])]),
        ],
        Cautions = Cautions,
    };

    private static double Round(double load) => Math.Round(load, load < 20 ? 1 : 0);

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
