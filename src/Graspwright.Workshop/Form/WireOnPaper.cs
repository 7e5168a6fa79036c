using Graspwright.Form.Pattern;
using Graspwright.Form.Routes;
using Graspwright.Form.Surface;
using Graspwright.Numerics;
using Nearest = Graspwright.Form.Surface.Nearest;

namespace Graspwright.Workshop.Form;

/// <summary>A wire on a flat piece.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Runs">Where it goes on the paper; more than one run where it leaves the piece and comes back [m].</param>
public sealed record WireOnPaper(string Name, IReadOnlyList<IReadOnlyList<(double X, double Y)>> Runs)
{
    private const double Step = 0.8e-3, Off = 0.5e-3, Jump = 3;

    internal static IReadOnlyList<IReadOnlyList<(double X, double Y)>> Lines(WireOnForm wire, SheetOnForm sheet, PatternPiece piece, Nearest tree, Func<double, double, (double X, double Y)> place)
    {
        List<IReadOnlyList<(double, double)>> runs = [];
        List<(double X, double Y)> run = [];
        foreach (Vector3D p in wire.Route is { } route ? LineShape.Even(WireOnForm.Lifted(sheet, route.Places, 0.5, 0), Step) : [])
        {
            Foot foot = tree.To(p, 4 * Off);
            (double X, double Y)? at = foot.Face >= 0 && Math.Abs(foot.Distance) <= Off ? PaperPieces.Flat(piece, tree.Mesh, foot, place) : null;
            // a jump: the wire crosses a seam or a dart that parts the piece from itself
            if (run.Count > 0 && (at is null || double.Hypot(at.Value.X - run[^1].X, at.Value.Y - run[^1].Y) > Jump * Step))
            {
                runs.Add(run);
                run = [];
            }

            if (at is { } on)
            {
                run.Add(on);
            }
        }

        runs.Add(run);
        return [.. runs.Where(r => r.Count > 1)];
    }
}
