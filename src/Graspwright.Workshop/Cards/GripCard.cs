using System.Globalization;
using Graspwright.Hand;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Cards;

/// <summary>One grip as the wearer does it.</summary>
/// <param name="Choice">The grip with its object and locks.</param>
public sealed record CardGrip(GripChoice Choice)
{
    /// <summary>The run; <see langword="null"/> = the hand can't do it, see the choice.</summary>
    public GripCase? Case { get; init; }

    /// <summary>What to do, in order.</summary>
    public IReadOnlyList<string> Steps { get; init; } = [];

    /// <summary>What happens out of order.</summary>
    public IReadOnlyList<string> OutOfOrder { get; init; } = [];

    /// <summary>Seconds from the start of the wrist's move to the first touch; NaN = nothing touches.</summary>
    public double TouchSeconds { get; init; } = double.NaN;

    /// <summary>Seconds from the start of the wrist's move to the full grip.</summary>
    public double GripSeconds { get; init; } = double.NaN;

    /// <summary>Seconds from the muscle signal, where one comes first, to the full grip.</summary>
    public double WholeSeconds { get; init; } = double.NaN;
}

/// <summary>The card that tells the wearer the order of muscle signal and wrist for each grip.</summary>
/// <remarks>
/// Seconds are the wearer's joint travel in the closing run ÷ the wearer's speed; a signal takes the controller's delay.
/// How long the muscle itself needs is the wearer's own and not counted.
/// </remarks>
public static class GripCard
{
    /// <summary>Delay between a muscle signal and the lock's move [s].</summary>
    /// <source key="farrell-weir-2007">Best controller delay 100 to 125 ms; the longer.</source>
    public const double SignalSeconds = 0.125;

    /// <summary>Makes the card.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Name of the hand file, for messages.</param>
    /// <param name="solver">What follows the equilibrium.</param>
    /// <returns>The grips with the answer, or what is wrong.</returns>
    public static (Answer? Answer, IReadOnlyList<CardGrip> Grips, IReadOnlyList<InputError> Errors) Make(HandModel hand, string file, Solver? solver = null)
    {
        ArgumentNullException.ThrowIfNull(hand);
        var grips = new List<CardGrip>();
        var errors = new List<InputError>();
        foreach (GripChoice choice in GripChoice.All(hand))
        {
            if (choice.Lacks.Length > 0)
            {
                grips.Add(new(choice));
                continue;
            }

            (GripCase? held, IReadOnlyList<InputError> wrong) = Run(hand, file, choice, choice.Pattern?.Name ?? GripQuestion.AllFree, solver);
            errors.AddRange(wrong);
            GripCase? free = choice.Pattern is null ? held : Run(hand, file, choice, GripQuestion.AllFree, solver).Case;
            grips.Add(held is null ? new(choice with { Lacks = "the closing run could not be followed" }) : Card(hand, choice, held, free));
        }

        return grips.All(g => g.Case is null) ? (null, grips, errors) : (Answer(hand, grips), grips, errors);
    }

    /// <summary>Word of a grip.</summary>
    /// <param name="kind">The grip.</param>
    public static string Word(this GripKind kind) => kind.ToString().ToLowerInvariant();

    private static (GripCase? Case, IReadOnlyList<InputError> Errors) Run(HandModel hand, string file, GripChoice choice, string locks, Solver? solver)
    {
        GripQuestion question = new(hand) { File = file, Objects = [choice.Thing!.Name], Locks = [locks], Efforts = [Effort.AllDay] };
        GripResult result = Gripping.Answer(solver is null ? question : question with { Solver = solver });
        return (result.Cases.FirstOrDefault(c => c.Reading.Run.End != RunEnd.NotFollowed), result.Errors);
    }

    private static CardGrip Card(HandModel hand, GripChoice choice, GripCase held, GripCase? free)
    {
        double speed = hand.Wrist.SpeedRadiansPerSecond;
        RunReading reading = held.Reading;
        double end = reading.End[TraceLayout.JointTravel], touch = reading.Closing(EventKind.Touch) is { } first ? reading.StateAt(first.ThetaRadians)[TraceLayout.JointTravel] : double.NaN;
        bool signal = choice.Pattern is not null;
        return new(choice)
        {
            Case = held,
            TouchSeconds = touch / speed,
            GripSeconds = end / speed,
            WholeSeconds = end / speed + (signal ? SignalSeconds : 0),
            Steps = CardWords.Steps(hand, choice, held, touch, end),
            OutOfOrder = CardWords.OutOfOrder(hand, choice, held, free),
        };
    }

    private static Answer Answer(HandModel hand, List<CardGrip> grips)
    {
        CardGrip[] done = [.. grips.Where(g => g.Case is not null)];
        string each = string.Join(", ", done.Select(g => Say($"{g.Choice.Kind.Word()} {g.WholeSeconds:0.0} s")));
        string lacking = string.Join("; ", grips.Where(g => g.Case is null).Select(g => $"{g.Choice.Kind.Word()}: {g.Choice.Lacks}"));
        return new()
        {
            Verb = "card",
            Hand = hand.Name,
            Sentence = $"At {double.RadiansToDegrees(hand.Wrist.SpeedRadiansPerSecond).ToString("0", CultureInfo.InvariantCulture)}°/s and the all-day effort, from rest to full grip: {each}.{(lacking.Length > 0 ? $" Not on this hand: {lacking}." : "")}",
            Figures = [.. done.SelectMany(g => Figures(hand, g))],
            Findings = [.. done.SelectMany(g => g.Case!.Situation.Findings.Where(f => f.Key is "reopens" or "lock_overloaded" && f.Verdict is Verdict.Fails))],
            Tables =
            [
                new("grip card", [new("grip", ""), new("on", ""), new("locks", ""), new("touch", "s"), new("full grip", "s"), new("grip", "N")],
                    [.. done.Select(g => (IReadOnlyList<Cell>)[g.Choice.Kind.Word(), g.Choice.Thing!.Name, g.Choice.Pattern?.Name ?? "none", g.TouchSeconds, g.WholeSeconds, g.Case!.Reading.End[TraceLayout.Grip]])]),
                new("order", [new("grip", ""), new("step", ""), new("what to do", "")],
                    [.. done.SelectMany(g => g.Steps.Select((s, i) => (IReadOnlyList<Cell>)[g.Choice.Kind.Word(), (double)(i + 1), s]))]),
                new("out of order", [new("grip", ""), new("what happens", "")],
                    [.. done.SelectMany(g => g.OutOfOrder.Select(s => (IReadOnlyList<Cell>)[g.Choice.Kind.Word(), s]))]),
            ],
            Cautions = Cautions.Grip,
        };
    }

    private static IEnumerable<Figure> Figures(HandModel hand, CardGrip grip)
    {
        double speed = double.RadiansToDegrees(hand.Wrist.SpeedRadiansPerSecond);
        Terms terms = new();
        string travel = terms.Input("joint_travel", double.RadiansToDegrees(grip.Case!.Reading.End[TraceLayout.JointTravel]), "deg"), rate = terms.Input("angular_speed", speed, "deg/s");
        string signal = grip.Choice.Pattern is null ? "" : $" + {terms.Input("signal_delay", SignalSeconds, "s")}";
        yield return new($"{grip.Choice.Kind.Word()}_seconds", $"time to the full {grip.Choice.Kind.Word()} grip", "s")
        {
            Value = grip.WholeSeconds,
            Working = terms.Working($"{travel}/{rate}{signal}", grip.Choice.Pattern is null ? "drive-model" : "farrell-weir-2007"),
        };
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
