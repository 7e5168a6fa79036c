using Graspwright.Form.Surface;

namespace Graspwright.Form.Routes;

/// <summary>Every triangle laid flat before each of its sides: the side runs from 0 to its length, the triangle lies above it.</summary>
internal sealed class Unfolded
{
    /// <summary>Lays the triangles flat.</summary>
    /// <param name="sides">The surface with its neighbours.</param>
    public Unfolded(Neighbourhood sides)
    {
        Sides = sides;
        Mesh mesh = sides.Mesh;
        int[] c = mesh.Corners;
        Length = new double[c.Length];
        (TipX, TipY) = (new double[c.Length], new double[c.Length]);
        for (int h = 0; h < c.Length; h++)
        {
            Length[h] = SurfaceSums.Length(mesh, h);
        }

        MeanLength = Length.DefaultIfEmpty(0).Average();
        for (int h = 0; h < c.Length; h++)
        {
            double l = Length[h], back = Length[Neighbourhood.Previous(h)], next = Length[Neighbourhood.Next(h)];
            TipX[h] = l > 0 ? (l * l + back * back - next * next) / (2 * l) : 0;
            TipY[h] = Math.Sqrt(Math.Max(0, back * back - TipX[h] * TipX[h]));
        }

        First = new int[mesh.PointCount + 1];
        foreach (int v in c)
        {
            First[v + 1]++;
        }

        for (int v = 0; v < mesh.PointCount; v++)
        {
            First[v + 1] += First[v];
        }

        Leaving = new int[c.Length];
        int[] at = First[..^1];
        for (int h = 0; h < c.Length; h++)
        {
            Leaving[at[c[h]]++] = h;
        }
    }

    /// <summary>The surface.</summary>
    public Neighbourhood Sides { get; }

    /// <summary>Length of each side [m].</summary>
    public double[] Length { get; }

    /// <summary>Mean length of the sides [m].</summary>
    public double MeanLength { get; }

    /// <summary>The corner across each side, along it [m].</summary>
    public double[] TipX { get; }

    /// <summary>The corner across each side, above it [m].</summary>
    public double[] TipY { get; }

    /// <summary>Where the sides that leave a point begin in <see cref="Leaving"/>.</summary>
    public int[] First { get; }

    /// <summary>Sides by the point that they leave.</summary>
    public int[] Leaving { get; }
}
