using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Region;

/// <summary>A branch with the line round its root drawn into the surface.</summary>
/// <param name="Mesh">The surface, cut along that line.</param>
/// <param name="IsBranch">Whether a triangle lies beyond the line.</param>
/// <param name="Foot">Middle of the line [m].</param>
/// <param name="Along">Direction of the branch's middle line, square to the plane of the line.</param>
/// <param name="Outer">Direction square to it, away from the web.</param>
/// <param name="Length">How far the branch goes on beyond the plane [m].</param>
/// <param name="Girth">Length of the line [m].</param>
/// <param name="Web">Where the line passes the web [m].</param>
public sealed record BranchRoot(Mesh Mesh, bool[] IsBranch, Vector3D Foot, Vector3D Along, Vector3D Outer, double Length, double Girth, Vector3D Web)
{
    private const int Turns = 8;
    private const double Step = 0.001, NearSection = 0.35, FarSection = 0.75; // shares of the way from web to tip at which the middle line is looked for

    /// <summary>Draws the line: square to the branch's middle line, as near to the web as the branch is cut off whole there.</summary>
    /// <param name="sides">The form.</param>
    /// <param name="branch">The branch.</param>
    /// <returns>The root; <see langword="null"/> = no plane near the web cuts it off whole.</returns>
    public static BranchRoot? Of(Neighbourhood sides, Branch branch)
    {
        ArgumentNullException.ThrowIfNull(sides);
        ArgumentNullException.ThrowIfNull(branch);
        Mesh mesh = sides.Mesh;
        Vector3D tip = mesh.At(branch.Tip), web = mesh.At(branch.Web), along = MiddleLine(sides, branch);
        double from = web.Dot(along), to = tip.Dot(along);
        HashSet<int> other = [.. branch.Other];
        for (double at = from + Step; at < from + 0.6 * (to - from); at += Step)
        {
            double plane = at;
            double[] values = [.. Enumerable.Range(0, mesh.PointCount).Select(v => mesh.At(v).Dot(along) - plane)];
            bool[] beyond = Beyond(sides, values, branch.Tip);
            // what the plane cuts off may hold nothing of what the branch parts from
            if (Enumerable.Range(0, mesh.Corners.Length).Any(h => beyond[h / 3] && values[mesh.Corners[h]] > 0 && other.Contains(mesh.Corners[h])))
            {
                continue;
            }

            Imprinted drawn = Imprint.Zero(sides, values, f => beyond[f]);
            bool[] isBranch = [.. drawn.OldFace.Select((old, f) => beyond[old] && Side(drawn.Mesh, values, f) > 0)];
            (Mesh part, _) = drawn.Mesh.Keep(f => isBranch[f]);
            Neighbourhood cut = Neighbourhood.Of(part);
            if (cut.Loops().Count == 1 && cut.Parts().Count == 1)
            {
                return Rooted(drawn.Mesh, isBranch, cut, along, web, to);
            }
        }

        return null;
    }

    private static BranchRoot Rooted(Mesh mesh, bool[] isBranch, Neighbourhood cut, Vector3D along, Vector3D web, double to)
    {
        double girth = 0, nearest = double.PositiveInfinity;
        Vector3D foot = default, at = default;
        foreach (int h in cut.Loops()[0])
        {
            double side = SurfaceSums.Length(cut.Mesh, h);
            Vector3D p = cut.Mesh.At(cut.From(h)), q = cut.Mesh.At(cut.To(h));
            foot += side / 2 * (p + q);
            girth += side;
            (nearest, at) = (p - web).Length < nearest ? ((p - web).Length, p) : (nearest, at);
        }

        foot = 1 / girth * foot;
        Vector3D away = foot - at;
        return new(mesh, isBranch, foot, along, (away - away.Dot(along) * along).Unit, to - foot.Dot(along), girth, at);
    }

    // Through the middles of two sections, square to itself: turned until it is.
    private static Vector3D MiddleLine(Neighbourhood sides, Branch branch)
    {
        Mesh mesh = sides.Mesh;
        Vector3D tip = mesh.At(branch.Tip), web = mesh.At(branch.Web), along = (tip - web).Unit;
        for (int round = 0; round < Turns; round++)
        {
            double from = web.Dot(along), to = tip.Dot(along);
            if (Middle(sides, branch.Tip, along, from + NearSection * (to - from)) is not { } near || Middle(sides, branch.Tip, along, from + FarSection * (to - from)) is not { } far)
            {
                break;
            }

            along = (far - near).Unit;
        }

        return along;
    }

    // Middle of the section of a plane with what hangs together with the tip beyond it.
    private static Vector3D? Middle(Neighbourhood sides, int tip, Vector3D along, double plane)
    {
        Mesh mesh = sides.Mesh;
        double[] values = [.. Enumerable.Range(0, mesh.PointCount).Select(v => mesh.At(v).Dot(along) - plane)];
        bool[] beyond = Beyond(sides, values, tip);
        Vector3D sum = default;
        double length = 0;
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            if (!beyond[f])
            {
                continue;
            }

            List<Vector3D> ends = [];
            for (int k = 0; k < 3; k++)
            {
                int a = mesh.Corners[3 * f + k], b = mesh.Corners[3 * f + (k + 1) % 3];
                if (values[a] > 0 != values[b] > 0)
                {
                    ends.Add(mesh.At(a) + values[a] / (values[a] - values[b]) * (mesh.At(b) - mesh.At(a)));
                }
            }

            if (ends.Count == 2)
            {
                double piece = (ends[1] - ends[0]).Length;
                sum += piece / 2 * (ends[0] + ends[1]);
                length += piece;
            }
        }

        return length > 0 ? 1 / length * sum : null;
    }

    // Triangles that reach beyond the plane and hang together with the tip.
    private static bool[] Beyond(Neighbourhood sides, double[] values, int tip)
    {
        int[] corners = sides.Mesh.Corners;
        bool[] reached = new bool[sides.Mesh.FaceCount];
        Stack<int> stack = new();
        for (int h = 0; h < corners.Length; h++)
        {
            if (corners[h] == tip && !reached[h / 3])
            {
                reached[h / 3] = true;
                stack.Push(h / 3);
            }
        }

        while (stack.Count > 0)
        {
            int f = stack.Pop();
            for (int h = 3 * f; h < 3 * f + 3; h++)
            {
                int g = sides.Across[h];
                if (g >= 0 && !reached[g / 3] && (values[sides.From(h)] > 0 || values[sides.To(h)] > 0))
                {
                    reached[g / 3] = true;
                    stack.Push(g / 3);
                }
            }
        }

        return reached;
    }

    private static double Side(Mesh mesh, double[] values, int f)
    {
        double sum = 0;
        for (int k = 0; k < 3; k++)
        {
            int v = mesh.Corners[3 * f + k];
            sum += v < values.Length ? values[v] : 0;
        }

        return sum;
    }
}
