using Graspwright.Mechanics.Holding;
using Graspwright.Numerics;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Jobs;

/// <summary>How the measures of the day's jobs are read and worked out; their table is <see cref="HandMeasureTable"/>.</summary>
public static class JobMeasures
{
    /// <summary>Source of the statics of holding.</summary>
    internal const string Source = "holding-statics";

    /// <summary>A number of a job, or why there is none.</summary>
    /// <param name="outcome">The job.</param>
    /// <param name="number">The number.</param>
    internal static Reading Read(JobOutcome outcome, Func<JobOutcome, double> number) => outcome.Unknown is { } why ? Reading.None(why) : number(outcome);

    /// <summary>Figures of all jobs with their working.</summary>
    /// <param name="outcomes">The jobs.</param>
    public static IReadOnlyList<Figure> Figures(IReadOnlyList<JobOutcome> outcomes)
    {
        ArgumentNullException.ThrowIfNull(outcomes);
        return [DoneOf(outcomes), .. outcomes.SelectMany(o => (Figure[])[MarginOf(o), SpareOf(o), WristOf(o)])];
    }

    /// <summary>Number of jobs that work.</summary>
    internal static Figure DoneOf(IReadOnlyList<JobOutcome> outcomes)
    {
        Terms counted = new();
        foreach (JobOutcome o in outcomes)
        {
            counted.Add(counted.Input($"{o.Job.Name}_works", o.Works ? 1 : 0, ""));
        }

        return HandMeasureTable.JobsDone.Blank with { Value = outcomes.Count(o => o.Works), Working = counted.Working(counted.Sum, Source) };
    }

    /// <summary>Spare of a job ÷ the job.</summary>
    internal static Figure MarginOf(JobOutcome o)
    {
        Figure figure = HandMeasureTable.JobMargin.Blank with { Key = $"{HandMeasureTable.JobMargin.Key}@{o.Job.Name}" };
        if (Why(o) is { } why)
        {
            return figure with { Why = why };
        }

        (string balance, Terms terms) = Balance(o);
        return figure with { Value = o.Margin, Low = Math.Min(o.MarginLow, o.Margin), High = Math.Max(o.MarginHigh, o.Margin), Working = terms.Working($"{balance} - 1", Source) };
    }

    /// <summary>What could be added to a job.</summary>
    internal static Figure SpareOf(JobOutcome o)
    {
        Figure figure = HandMeasureTable.JobSpare.Blank with { Key = $"{HandMeasureTable.JobSpare.Key}@{o.Job.Name}", Unit = o.Unit };
        if (Why(o) is { } why)
        {
            return figure with { Why = why };
        }

        (string balance, Terms terms) = Balance(o);
        string amount = terms.Input("asked", o.Amount, o.Unit);
        return figure with { Value = o.Spare, Low = Math.Min(o.MarginLow, o.Margin) * o.Amount, High = Math.Max(o.MarginHigh, o.Margin) * o.Amount, Working = terms.Working($"({balance} - 1)·{amount}", Source) };
    }

    /// <summary>The drive's moment less what the weights of hand, device and load give toward the drive's side.</summary>
    internal static Figure WristOf(JobOutcome o)
    {
        Figure figure = HandMeasureTable.WristMoment.Blank with { Key = $"{HandMeasureTable.WristMoment.Key}@{o.Job.Name}" };
        if (o.Unknown is not null)
        {
            return figure with { Why = o.Unknown };
        }

        Terms terms = new();
        double side = o.FlexingOfAll == 0 || (o.DriveMoment - o.WristNeeds) * o.FlexingOfAll >= 0 ? 1 : -1;
        string drive = terms.Input("drive", o.DriveMoment, "N·m");
        foreach (Carried c in o.Carried)
        {
            double newtons = c.Mass * Attitude.Gravity;
            terms.Add($"{terms.Input($"{c.Name}_mass", c.Mass, "kg")}·9.80665·{terms.Input($"{c.Name}_arm", newtons > 0 ? 1000 * side * c.Flexing(o.Down) / newtons : 0, "mm")}/1000");
        }

        terms.Add(terms.Input("load", side * o.FlexingMoment, "N·m"));
        return figure with { Value = o.WristNeeds, Working = terms.Working($"{drive} - ({terms.Sum})", "plagenhoef-1983") };
    }

    private static string? Why(JobOutcome o) => o.Unknown ?? (o.Held!.Factor < 0 ? "nothing is held: no contact forces balance the object" : null);

    /// <summary>Balance of the contact forces at the limit against the load, along the load: their sum ÷ the load is the load factor.</summary>
    private static (string Formula, Terms Terms) Balance(JobOutcome o)
    {
        Terms terms = new();
        Vector3D force = o.Load.Force;
        bool turns = force.Length < 1e-9;
        Vector3D moment = o.Load.MomentAbout(o.Grasp!.Centre), way = turns ? moment.Unit : force.Unit;
        Vector3D spin = turns ? Spin(o) : default;
        for (int c = 0; c < o.Grasp.Contacts.Count; c++)
        {
            HoldContact contact = o.Grasp.Contacts[c];
            Vector3D f = o.Held!.Forces[c];
            double against = -(turns ? (contact.Place - o.Grasp.Centre).Cross(f) + spin : f).Dot(way);
            terms.Add(terms.Input(contact.Name, against, turns ? "N·m" : "N"));
        }

        string load = terms.Input("load", turns ? moment.Length : force.Length, turns ? "N·m" : "N");
        return ($"({terms.Sum})/{load}", terms);
    }

    /// <summary>Friction against turning on the spot is not among the forces: what the moments lack is its share, spread evenly over the pads.</summary>
    private static Vector3D Spin(JobOutcome o)
    {
        Vector3D sum = default;
        for (int c = 0; c < o.Grasp!.Contacts.Count; c++)
        {
            sum += (o.Grasp.Contacts[c].Place - o.Grasp.Centre).Cross(o.Held!.Forces[c]);
        }

        return 1.0 / o.Grasp.Contacts.Count * (-o.Held!.Factor * o.Load.MomentAbout(o.Grasp.Centre) - sum);
    }
}
