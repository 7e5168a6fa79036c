using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Routes;

/// <summary>The way back from a point to the source: at each place the window or corner from which it is nearest.</summary>
internal static class RouteTrace
{
    private const double Hair = 1e-9;

    /// <summary>Follows the way back.</summary>
    /// <param name="flat">The triangles laid flat.</param>
    /// <param name="run">Distances from the source.</param>
    /// <param name="from">The source.</param>
    /// <param name="to">The point.</param>
    /// <exception cref="InvalidOperationException">The way does not come back to its source.</exception>
    public static SurfaceRoute Of(Unfolded flat, BoundedSpread run, int from, int to)
    {
        Neighbourhood sides = flat.Sides;
        Mesh mesh = sides.Mesh;
        List<Vector3D> places = [mesh.At(to)];
        List<int> faces = [];
        Step at = new(to, -1, 0, 0, -1);
        for (int i = 0; at.Point != from; i++)
        {
            if (i > mesh.Corners.Length)
            {
                throw new InvalidOperationException("The shortest way does not come back to where it begins: triangles of no area may be the cause.");
            }

            at = AtCorner(flat, at.Point >= 0 ? FromPoint(flat, run, at.Point) : FromSide(flat, run, at));
            places.Add(at.Point >= 0 ? mesh.At(at.Point) : mesh.At(sides.From(at.Side)) + at.Place / flat.Length[at.Side] * (mesh.At(sides.To(at.Side)) - mesh.At(sides.From(at.Side))));
            faces.Add(at.Face);
        }

        places.Reverse();
        faces.Reverse();
        double length = 0;
        for (int i = 1; i < places.Count; i++)
        {
            length += (places[i] - places[i - 1]).Length;
        }

        return new(places, length) { Faces = faces };
    }

    // A place at the end of a side is that point: round it the way could go on for ever without getting nearer.
    private static Step AtCorner(Unfolded flat, Step at)
    {
        if (at.Side < 0)
        {
            return at;
        }

        double l = flat.Length[at.Side];
        return at.Place <= Hair * l ? at with { Point = flat.Sides.From(at.Side), Side = -1 } : at.Place >= l * (1 - Hair) ? at with { Point = flat.Sides.To(at.Side), Side = -1 } : at;
    }

    private static Step FromPoint(Unfolded flat, BoundedSpread run, int v)
    {
        Step best = new(v, -1, 0, double.PositiveInfinity, -1);
        for (int i = flat.First[v]; i < flat.First[v + 1]; i++)
        {
            int h = flat.Leaving[i], next = Neighbourhood.Next(h), back = Neighbourhood.Previous(h);
            best = Nearer(best, new(flat.Sides.To(h), -1, 0, run.Far[flat.Sides.To(h)] + flat.Length[h], h / 3));
            best = Nearer(best, new(flat.Sides.From(back), -1, 0, run.Far[flat.Sides.From(back)] + flat.Length[back], h / 3));
            best = Over(run, best, next, flat.TipX[next], flat.TipY[next]);
        }

        return best;
    }

    // From a place of a side back over the triangle behind it.
    private static Step FromSide(Unfolded flat, BoundedSpread run, Step at)
    {
        int g = flat.Sides.Across[at.Side], next = Neighbourhood.Next(g), back = Neighbourhood.Previous(g);
        double l = flat.Length[g], x = l - at.Place, cx = flat.TipX[g], cy = flat.TipY[g];
        int a = flat.Sides.From(g), b = flat.Sides.To(g), tip = flat.Sides.From(back);
        Step best = new(tip, -1, 0, run.Far[tip] + double.Hypot(cx - x, cy), g / 3);
        best = Nearer(best, new(a, -1, 0, run.Far[a] + x, g / 3));
        best = Nearer(best, new(b, -1, 0, run.Far[b] + l - x, g / 3));
        best = Over(run, best, next, flat.TipX[next], flat.TipY[next], (l - x) / l);
        return Over(run, best, back, flat.TipX[back], flat.TipY[back], x / l, start: true);

        // the place as the other side's frame has it: from that side's end (b) or start (a) toward its tip
        Step Over(BoundedSpread run, Step best, int h, double tipX, double tipY, double share, bool start = false)
        {
            // next runs from b to the tip: its own tip is a; back runs from the tip to a: its own tip is b
            double px = start ? flat.Length[h] + share * (tipX - flat.Length[h]) : share * tipX, py = share * tipY;
            return RouteTrace.Over(run, best, h, px, py);
        }
    }

    // The nearest way to a place of the triangle through the windows of one of its sides.
    private static Step Over(BoundedSpread run, Step best, int h, double px, double py)
    {
        for (int i = run.Front.First(h); i >= 0; i = run.Front[i].Next)
        {
            ref WaveWindow w = ref run.Front[i];
            double t = py == w.Y ? 0 : py / (py - w.Y), x = Math.Clamp(px + t * (w.X - px), w.Low, w.High);
            best = Nearer(best, new(-1, h, x, w.At(x) + double.Hypot(px - x, py), h / 3));
        }

        return best;
    }

    private static Step Nearer(Step a, Step b) => b.Distance < a.Distance ? b : a;

    /// <summary>A place of the way: a point, or a place of a side; the distance by it, and the triangle that lies between.</summary>
    private readonly record struct Step(int Point, int Side, double Place, double Distance, int Face);
}
