using System.Globalization;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Thumb;

/// <summary>Pinch that twelve daily tasks need, as a robot measured it (Smaby 2004, J Rehabil Res Dev, 10.1682/jrrd.2004.02.0215).</summary>
/// <remarks>Three figures of its table were seen: the least, 1.4 N, a remote control's button; nine of the twelve below 10.5 N; the most, 31.4 N, a mains plug.</remarks>
public static class DailyPinch
{
    /// <summary>Pinch of the easiest task [N].</summary>
    public const double Least = 1.4;

    /// <summary>Pinch below which nine of the twelve lie [N].</summary>
    public const double Nine = 10.5;

    /// <summary>Pinch of the hardest task [N].</summary>
    public const double Most = 31.4;

    /// <summary>How many of the twelve a pinch certainly does.</summary>
    /// <param name="newtons">Pinch [N].</param>
    public static int AtLeast(double newtons) => newtons >= Most ? 12 : newtons >= Nine ? 9 : newtons >= Least ? 1 : 0;

    private static string Done(double newtons) => AtLeast(newtons) switch { 12 => "all twelve daily tasks", 0 => "none of twelve daily tasks", int some => $"at least {some} of twelve daily tasks" };

    /// <summary>What a pinch means for the twelve; <see langword="null"/> without a pinch.</summary>
    /// <param name="effort">Effort.</param>
    /// <param name="newtons">Pinch [N].</param>
    internal static Finding? Judge(Effort effort, double newtons)
    {
        if (double.IsNaN(newtons))
        {
            return null;
        }

        double margin = (newtons - Nine) / Nine;
        string some = newtons is >= Least and < Nine ? ", how many more was not seen in the source" : "";
        return new("daily_pinch", effort.Word(), margin < 0 && newtons >= Least ? Verdict.Tight : Verdicts.Of(margin),
            string.Create(CultureInfo.InvariantCulture, $"A pinch of {newtons:0.0} N at the {effort.Word()} effort does {Done(newtons)}{some} (Smaby 2004: {Least} N for a remote control, nine below {Nine} N, {Most} N for a mains plug)."),
            "A shorter output arm, or a lock behind a squeeze, brings more pinch.")
        { Figure = newtons, Limit = Nine, Unit = "N", Margin = margin };
    }
}
