using Graspwright.Mechanics.Holding;
using Graspwright.Numerics;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Jobs;

/// <summary>The measures of the day's jobs: <c>jobs_done</c>, <c>job_margin@name</c>, <c>job_spare@name</c>.</summary>
public static class JobMeasures
{
    /// <summary>Key of the number of jobs that work.</summary>
    public const string Done = "jobs_done";

    /// <summary>First part of the key of a job's margin.</summary>
    public const string Margin = "job_margin";

    /// <summary>First part of the key of the moment that the wrist must hold in a job.</summary>
    public const string Wrist = "wrist_moment";

    /// <summary>First part of the key of a job's spare load.</summary>
    public const string Spare = "job_spare";

    /// <summary>Source of the statics of holding.</summary>
    internal const string Source = "holding-statics";

    /// <summary>Key of a measure of one job.</summary>
    /// <param name="measure"><see cref="Margin"/> or <see cref="Spare"/>.</param>
    /// <param name="job">Name of the job.</param>
    public static string KeyOf(string measure, string job) => $"{measure}@{job}";

    /// <summary>Value of a measure by its key, for search and changes; more is better.</summary>
    /// <param name="key">Key.</param>
    /// <param name="outcomes">The jobs.</param>
    /// <exception cref="ArgumentException">There is no such measure or job.</exception>
    public static Reading Value(string key, IReadOnlyList<JobOutcome> outcomes)
    {
        ArgumentNullException.ThrowIfNull(key);
        ArgumentNullException.ThrowIfNull(outcomes);
        if (key == Done)
        {
            return outcomes.Count(o => o.Works);
        }

        string[] parts = key.Split('@', 2);
        JobOutcome outcome = outcomes.FirstOrDefault(o => parts.Length == 2 && o.Job.Name == parts[1]) ?? throw new ArgumentException($"There is no job of the measure '{key}'.", nameof(key));
        if (outcome.Unknown is { } why)
        {
            return Reading.None(why);
        }

        return parts[0] switch
        {
            Margin => outcome.Margin,
            Spare => outcome.Spare,
            Wrist => outcome.WristNeeds,
            _ => throw new ArgumentException($"There is no measure '{key}'.", nameof(key)),
        };
    }

    /// <summary>Figures of all jobs with their working.</summary>
    /// <param name="outcomes">The jobs.</param>
    public static IReadOnlyList<Figure> Figures(IReadOnlyList<JobOutcome> outcomes)
    {
        ArgumentNullException.ThrowIfNull(outcomes);
        Terms counted = new();
        foreach (JobOutcome o in outcomes)
        {
            counted.Add(counted.Input($"{o.Job.Name}_works", o.Works ? 1 : 0, ""));
        }

        List<Figure> figures = [new(Done, "jobs that work", "") { Value = outcomes.Count(o => o.Works), Working = counted.Working(counted.Sum, Source) }];
        foreach (JobOutcome o in outcomes)
        {
            figures.Add(MarginOf(o));
            figures.Add(SpareOf(o));
            figures.Add(WristOf(o));
        }

        return figures;
    }

    private static Figure MarginOf(JobOutcome o)
    {
        Figure figure = new(KeyOf(Margin, o.Job.Name), "spare of the job ÷ the job", "");
        if (Why(o) is { } why)
        {
            return figure with { Why = why };
        }

        (string balance, Terms terms) = Balance(o);
        return figure with { Value = o.Margin, Low = Math.Min(o.MarginLow, o.Margin), High = Math.Max(o.MarginHigh, o.Margin), Working = terms.Working($"{balance} - 1", Source) };
    }

    private static Figure SpareOf(JobOutcome o)
    {
        Figure figure = new(KeyOf(Spare, o.Job.Name), "what could be added, or is missing where negative", o.Unit);
        if (Why(o) is { } why)
        {
            return figure with { Why = why };
        }

        (string balance, Terms terms) = Balance(o);
        string amount = terms.Input("asked", o.Amount, o.Unit);
        return figure with { Value = o.Spare, Low = Math.Min(o.MarginLow, o.Margin) * o.Amount, High = Math.Max(o.MarginHigh, o.Margin) * o.Amount, Working = terms.Working($"({balance} - 1)·{amount}", Source) };
    }

    /// <summary>The drive's moment less what the weights of hand, device and load give toward the drive's side.</summary>
    private static Figure WristOf(JobOutcome o)
    {
        Figure figure = new(KeyOf(Wrist, o.Job.Name), "moment that the wrist must hold, in its driving direction", "N·m");
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
