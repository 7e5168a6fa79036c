using System.Numerics;

namespace Graspwright.Form.Tape;

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

/// <summary>A stretch of limb as marks describe it: at each mark the section of that girth, width and depth, smooth in between.</summary>
/// <remarks>Frame of the limb: x toward the thumb, y toward the back of the hand, z toward the fingertips.</remarks>
public sealed class TapeForm
{
    private readonly double[] _places;
    private readonly Smooth _across, _deep, _power;

    /// <summary>A form from marks.</summary>
    /// <param name="marks">Two marks or more, places rising.</param>
    /// <exception cref="ArgumentException">Too few marks, places that do not rise, or a girth that no closed curve has with its width and depth.</exception>
    public TapeForm(IReadOnlyList<TapeMark> marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        Section[] sections = [.. marks.Select(m => Section.Of(m.Girth, m.Width, m.Depth) ?? throw new ArgumentException("No closed curve has this girth with this width and depth.", nameof(marks)))];
        _places = [.. marks.Select(m => m.Place)];
        if (_places.Length < 2 || _places.Zip(_places.Skip(1)).Any(p => p.Second <= p.First))
        {
            throw new ArgumentException("A form needs two marks or more with places that rise.", nameof(marks));
        }

        _across = new(_places, [.. sections.Select(s => s.Across)]);
        _deep = new(_places, [.. sections.Select(s => s.Deep)]);
        _power = new(_places, [.. sections.Select(s => s.Power)]);
    }

    /// <summary>Places of the marks [m].</summary>
    public IReadOnlyList<double> Places => _places;

    /// <summary>The section at a place.</summary>
    /// <param name="place">Place [m].</param>
    public Section At(double place) => new(_across.At(place), _deep.At(place), _power.At(place));

    /// <summary>Volume of the limb between two places [m³].</summary>
    /// <param name="from">First place [m].</param>
    /// <param name="to">Last place [m].</param>
    public double Volume(double from, double to)
    {
        IReadOnlyList<double> grid = Grid(from, to, (to - from) / 200);
        double sum = 0, a = At(grid[0]).Area;
        for (int i = 1; i < grid.Count; i++)
        {
            double b = At(grid[i]).Area;
            sum += (grid[i] - grid[i - 1]) * (a + b + Math.Sqrt(a * b)) / 3; // frustum
            a = b;
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
        IReadOnlyList<double> grid = Grid(from, to, Math.Max((to - from) / 12, 1e-4));
        List<(double, double, double)> rows = [];
        double along = 0, before = 0;
        for (int i = 0; i < grid.Count; i++)
        {
            double girth = At(grid[i]).Girth;
            along += i == 0 ? 0 : double.Hypot(grid[i] - grid[i - 1], (girth - before) / (2 * Math.PI));
            rows.Add((grid[i], along, girth + Math.PI * thickness + overlap));
            before = girth;
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
                Vector3 a = near[next], b = near[k], c = far[k], d = far[next], cross = Vector3.Cross(c - a, d - b);
                points.Add((a + b + c + d) / 4);
                normals.Add(Vector3.Normalize(cross));
                areas.Add(cross.Length() / 2);
            }

            near = far;
        }

        return new(points, normals, areas);
    }

    /// <summary>Places between two others: both ends, the marks and evenly spaced places.</summary>
    /// <param name="from">First place [m].</param>
    /// <param name="to">Last place [m].</param>
    /// <param name="step">Spacing [m].</param>
    internal IReadOnlyList<double> Grid(double from, double to, double step)
    {
        SortedSet<double> grid = [from, to];
        grid.UnionWith(_places.Where(p => p > from && p < to));
        int count = Math.Clamp((int)Math.Ceiling((to - from) / step), 1, 20_000);
        for (int i = 1; i < count; i++)
        {
            grid.Add(from + (to - from) * i / count);
        }

        return [.. grid];
    }

    private Vector3[] Ring(double place, int round)
    {
        Section section = At(place);
        Vector3[] ring = new Vector3[round];
        for (int k = 0; k < round; k++)
        {
            (double x, double y) = section.At(2 * Math.PI * k / round);
            ring[k] = new((float)x, (float)y, (float)place);
        }

        return ring;
    }
}
