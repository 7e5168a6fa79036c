using System.Numerics;
using Graspwright.Moulding.ComingOff;

namespace Graspwright.Moulding.Limb;

/// <summary>A mark on the limb with what tape and vernier read there.</summary>
/// <param name="Place">Place along the limb, rising toward the fingertips [m].</param>
/// <param name="Girth">Girth [m].</param>
/// <param name="Width">Width, side to side [m]; NaN = not measured, taken as round.</param>
/// <param name="Depth">Depth, back to palm [m]; NaN = not measured.</param>
public readonly record struct TapeMark(double Place, double Girth, double Width, double Depth);

/// <summary>A surface as plain arrays, one entry a face.</summary>
/// <param name="Points">Middles of the faces, z along the limb [m].</param>
/// <param name="Normals">Outward normals, unit length.</param>
/// <param name="Areas">Areas [m²].</param>
public sealed record FacedSurface(IReadOnlyList<Vector3> Points, IReadOnlyList<Vector3> Normals, IReadOnlyList<double> Areas);

/// <summary>A stretch of limb as marks describe it: ellipses of the measured proportion and girth, straight in between.</summary>
public sealed class TapeForm
{
    private readonly TapeMark[] _marks;

    /// <summary>A form from marks.</summary>
    /// <param name="marks">Two marks or more, places rising.</param>
    public TapeForm(IReadOnlyList<TapeMark> marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        _marks = [.. marks];
        Girths = new([.. marks.Select(m => m.Place)], [.. marks.Select(m => m.Girth)]);
    }

    /// <summary>Girths along it.</summary>
    public Girths Girths { get; }

    /// <summary>Half axes of the ellipse at a place: across and deep [m].</summary>
    /// <param name="place">Place [m].</param>
    public (double Across, double Deep) HalfAxes(double place)
    {
        double flatness = Blend(place, m => double.IsNaN(m.Width) || double.IsNaN(m.Depth) ? 1 : m.Depth / m.Width);
        double across = Girths.At(place) / Ellipse.Perimeter(1, flatness);
        return (across, across * flatness);
    }

    /// <summary>Area of the cross-section [m²].</summary>
    /// <param name="place">Place [m].</param>
    public double Section(double place)
    {
        (double a, double b) = HalfAxes(place);
        return Math.PI * a * b;
    }

    /// <summary>Volume of the limb between two places [m³].</summary>
    /// <param name="from">First place [m].</param>
    /// <param name="to">Last place [m].</param>
    public double Volume(double from, double to)
    {
        IReadOnlyList<double> grid = Girths.Grid(from, to, (to - from) / 200);
        double sum = 0;
        for (int i = 1; i < grid.Count; i++)
        {
            double a = Section(grid[i - 1]), b = Section(grid[i]);
            sum += (grid[i] - grid[i - 1]) * (a + b + Math.Sqrt(a * b)) / 3; // frustum
        }

        return sum;
    }

    /// <summary>Outline of a sheet round the limb, laid flat: distance along the sheet and its whole width there.</summary>
    /// <param name="from">Near edge [m].</param>
    /// <param name="to">Far edge [m].</param>
    /// <param name="thickness">Thickness of the sheet: its middle lies half of it off the limb [m].</param>
    /// <param name="overlap">Overlap at the seam along the limb [m].</param>
    /// <returns>Rows of place on the limb, distance along the sheet and width [m].</returns>
    public IReadOnlyList<(double Place, double Along, double Width)> Outline(double from, double to, double thickness, double overlap)
    {
        IReadOnlyList<double> grid = Girths.Grid(from, to, Math.Max((to - from) / 12, 1e-4));
        List<(double, double, double)> rows = [];
        double along = 0;
        for (int i = 0; i < grid.Count; i++)
        {
            if (i > 0)
            {
                along += double.Hypot(grid[i] - grid[i - 1], (Girths.At(grid[i]) - Girths.At(grid[i - 1])) / (2 * Math.PI));
            }

            rows.Add((grid[i], along, Girths.At(grid[i]) + Math.PI * thickness + overlap));
        }

        return rows;
    }

    /// <summary>Area of an outline [m²].</summary>
    /// <param name="outline">Rows of <see cref="Outline"/>.</param>
    public static double Area(IReadOnlyList<(double Place, double Along, double Width)> outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        double sum = 0;
        for (int i = 1; i < outline.Count; i++)
        {
            sum += (outline[i].Along - outline[i - 1].Along) * (outline[i].Width + outline[i - 1].Width) / 2;
        }

        return sum;
    }

    /// <summary>Its surface in faces, for the check of undercuts.</summary>
    /// <param name="from">First place [m].</param>
    /// <param name="to">Last place [m].</param>
    /// <param name="along">Faces along the limb.</param>
    /// <param name="round">Faces round it.</param>
    public FacedSurface Faces(double from, double to, int along = 40, int round = 48)
    {
        List<Vector3> points = [], normals = [];
        List<double> areas = [];
        Vector3[] near = Ring(from, round);
        for (int i = 0; i < along; i++)
        {
            Vector3[] far = Ring(from + (to - from) * (i + 1) / along, round);
            for (int k = 0; k < round; k++)
            {
                int next = (k + 1) % round;
                Vector3 a = near[k], b = near[next], c = far[next], d = far[k], cross = Vector3.Cross(c - a, d - b);
                points.Add((a + b + c + d) / 4);
                normals.Add(Vector3.Normalize(cross));
                areas.Add(cross.Length() / 2);
            }

            near = far;
        }

        return new(points, normals, areas);
    }

    private Vector3[] Ring(double place, int round)
    {
        (double a, double b) = HalfAxes(place);
        Vector3[] ring = new Vector3[round];
        for (int k = 0; k < round; k++)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * k / round);
            ring[k] = new((float)(a * cos), (float)(b * sin), (float)place);
        }

        return ring;
    }

    private double Blend(double place, Func<TapeMark, double> of)
    {
        int i = Array.FindIndex(_marks, m => m.Place >= place);
        if (i <= 0)
        {
            return of(i == 0 ? _marks[0] : _marks[^1]);
        }

        double share = (place - _marks[i - 1].Place) / (_marks[i].Place - _marks[i - 1].Place);
        return of(_marks[i - 1]) + share * (of(_marks[i]) - of(_marks[i - 1]));
    }
}
