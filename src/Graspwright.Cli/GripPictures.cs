using System.Globalization;
using System.Text;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Views;

namespace Graspwright.Cli;

/// <summary>Writes the pictures of every case that ran: side views, curves, joint angles, loop.</summary>
internal static class GripPictures
{
    private const int MostViews = 4;

    /// <summary>Writes them.</summary>
    /// <param name="folder">Folder; made if it is not there.</param>
    /// <param name="hand">The hand.</param>
    /// <param name="result">The runs.</param>
    /// <param name="at">Wrist angles of the side views [deg]; empty = rest, touches and the end of closing.</param>
    /// <returns>How many files were written.</returns>
    public static int Write(string folder, HandModel hand, GripResult result, IReadOnlyList<double> at)
    {
        if (at.Count > MostViews)
        {
            throw new BadInputException(new InputError("command line", 0, 0, "--at", $"{at.Count} angles", $"at most {MostViews}", "Four views fit on a sheet."));
        }

        double travel = Math.Round(double.RadiansToDegrees(hand.Wrist.TravelRadians), 6);
        foreach (double angle in at.Where(a => !(a >= 0 && a <= travel)))
        {
            throw new BadInputException(new InputError("command line", 0, 0, "--at", string.Create(CultureInfo.InvariantCulture, $"{angle:0.######} deg"),
                string.Create(CultureInfo.InvariantCulture, $"0 to {travel:0.###} deg, the travel of the wrist"), "Give angles from the start posture; a run that ends sooner shows its last state."));
        }

        Folders.Make(folder, "--svg");
        int count = 0;
        foreach (GripCase c in result.Cases)
        {
            string stem = Stem(c.Situation);
            foreach ((string name, Picture picture) in Of(hand, c, at))
            {
                WholeFile.Write(Path.Combine(folder, $"{stem}-{name}.svg"), SvgWriter.Write(picture, $"{stem}-{name}"), "--svg");
                count++;
            }
        }

        return count;
    }

    private static IEnumerable<(string Name, Picture Picture)> Of(HandModel hand, GripCase c, IReadOnlyList<double> at)
    {
        RunResult run = c.Reading.Run;
        string sentence = GripResult.Say(c);
        Workshop.Views.PalmLine palm = new(Workshop.Drive.DriveMapping.ToVector(hand.Palm.Point), hand.Palm.DirectionRadians);
        IReadOnlyList<double[]> rows = [.. (at.Count > 0 ? at.Select(double.DegreesToRadians) : Moments(run)).Select(theta => SideView.Nearest(run, theta)).Distinct()];
        yield return ("side", SideViewSeries.Draw(c.Reading.Drive, c.Reading.Held, run, rows, sentence, palm));
        yield return ("curves", Curves.Main(run, sentence));
        yield return ("joints", Curves.Joints(run, sentence));
        if (run.Opening.Count > 0)
        {
            yield return ("loop", Curves.Loop(run));
        }
    }

    private static IEnumerable<double> Moments(RunResult run)
    {
        yield return 0;
        foreach (EventKind kind in (EventKind[])[EventKind.Touch, EventKind.AllTouch])
        {
            if (run.First(kind) is { Opening: false } happened)
            {
                yield return happened.ThetaRadians;
            }
        }

        yield return run.AtEnd[TraceLayout.Theta];
    }

    private static string Stem(Situation situation)
    {
        StringBuilder stem = new();
        foreach (char c in string.Create(CultureInfo.InvariantCulture, $"{situation.ObjectName}-{situation.Locks}-{situation.Effort}"))
        {
            stem.Append(char.IsLetterOrDigit(c) || c == '-' ? char.ToLowerInvariant(c) : '-');
        }

        return stem.ToString();
    }
}
