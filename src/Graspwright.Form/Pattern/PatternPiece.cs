using Graspwright.Form.Flattening;
using Graspwright.Form.Region;

namespace Graspwright.Form.Pattern;

/// <summary>A stretch of the rim of a piece between two corners of the pattern.</summary>
/// <param name="Seam">Number of the seam it belongs to; −1 = a free edge.</param>
/// <param name="Side">0 or 1: which of the seam's two sides; 0 for free edges.</param>
/// <param name="Points">Points of the piece along it, in the order of the rim.</param>
public sealed record RimRun(int Seam, int Side, IReadOnlyList<int> Points);

/// <summary>A notch: where it lies on the rim, which way is out, and its letter.</summary>
/// <param name="X">First coordinate [m].</param>
/// <param name="Y">Second coordinate [m].</param>
/// <param name="OutX">Outward direction, unit length.</param>
/// <param name="OutY">Its second coordinate.</param>
/// <param name="Letter">Letter, the same on both sides of a seam.</param>
public readonly record struct Notch(double X, double Y, double OutX, double OutY, string Letter);

/// <summary>A piece of the pattern, flat.</summary>
/// <param name="Piece">The piece on the form.</param>
/// <param name="Flat">The piece laid flat.</param>
/// <param name="Runs">Its rim in runs.</param>
/// <param name="Notches">Notches that match across seams.</param>
/// <param name="CutLine">Line to cut along, allowance added [m].</param>
public sealed record PatternPiece(Piece Piece, Flat Flat, IReadOnlyList<RimRun> Runs, IReadOnlyList<Notch> Notches, IReadOnlyList<(double X, double Y)> CutLine)
{
    /// <summary>Its rim without allowance [m].</summary>
    public IReadOnlyList<(double X, double Y)> SewLine => [.. Runs.SelectMany(r => r.Points.Take(r.Points.Count - 1)).Select(v => (Flat.X[v], Flat.Y[v]))];

    /// <summary>Area on the form [m²].</summary>
    public double Area => Surface.SurfaceSums.Of(Piece.Sides).Area;
}
