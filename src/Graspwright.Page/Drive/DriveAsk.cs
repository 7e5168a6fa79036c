using System.Globalization;
using System.Text.Json;
using Graspwright.Hand;
using Graspwright.Page.Pages;
using Graspwright.Workshop.Grip;

namespace Graspwright.Page.Drive;

/// <summary>What is looked at on the drive page.</summary>
/// <param name="Thing">Object in the hand; the first where there is none of the name.</param>
/// <param name="Effort">Effort.</param>
/// <param name="Locks">Lock pattern.</param>
/// <param name="AtDegrees">Wrist angle; NaN = where closing ends.</param>
/// <param name="Ghost">Number of the edit before which the hand is laid under as a ghost; 0 = none.</param>
/// <param name="WidthMm">Width of the scene [mm].</param>
public sealed record DriveAsk(string Thing, Effort Effort, string Locks, double AtDegrees, int Ghost, double WidthMm)
{
    private const double Narrowest = 80, Widest = 300, Usual = 180;

    /// <summary>Whether the mechanism alone fills the picture.</summary>
    public bool Near { get; init; }

    /// <summary>Key of a handle that is being moved; empty = none.</summary>
    public string Handle { get; init; } = "";

    /// <summary>Where it is moved to, hand frame [m].</summary>
    public Point To { get; init; }

    /// <summary>Number of the question, given back with the reply.</summary>
    public long Number { get; init; }

    /// <summary>From what stands behind the page's address.</summary>
    /// <param name="visit">The look at the page.</param>
    public static DriveAsk Of(Visit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return new(visit.Asked("object"), EffortOf(visit.Asked("effort")), visit.Asked("locks", GripQuestion.AllFree), Number1(visit.Asked("at")), (int)Whole(visit.Asked("ghost")), Usual) { Near = visit.Asked("view") == "near" };
    }

    /// <summary>From a question of the page's script.</summary>
    /// <param name="question">The question.</param>
    public static DriveAsk Of(JsonElement question)
    {
        double width = Value(question, "width");
        return new(Text(question, "object"), EffortOf(Text(question, "effort")), Text(question, "locks"), Value(question, "at"), (int)Finite(Value(question, "ghost"), 0), Math.Clamp(Finite(width, Usual), Narrowest, Widest))
        {
            Near = Text(question, "view") == "near",
            Handle = Text(question, "handle"),
            To = new(Finite(Value(question, "x"), 0) / 1000, Finite(Value(question, "y"), 0) / 1000),
            Number = (long)Finite(Value(question, "n"), 0),
        };
    }

    private static Effort EffortOf(string word) => word == Effort.Squeeze.Word() ? Effort.Squeeze : Effort.AllDay;

    private static double Number1(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : double.NaN;

    private static double Whole(string text) => Finite(Math.Round(Number1(text)), 0);

    private static double Finite(double value, double otherwise) => double.IsFinite(value) && Math.Abs(value) < 1e9 ? value : otherwise;

    private static string Text(JsonElement e, string name) => e.ValueKind == JsonValueKind.Object && e.TryGetProperty(name, out JsonElement v) && v.ValueKind == JsonValueKind.String ? v.GetString()! : "";

    private static double Value(JsonElement e, string name) => e.ValueKind == JsonValueKind.Object && e.TryGetProperty(name, out JsonElement v) && v.ValueKind == JsonValueKind.Number ? v.GetDouble() : double.NaN;
}
