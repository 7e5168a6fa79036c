using Graspwright.Drawing.Display;

namespace Graspwright.Drawing.Dxf;

/// <summary>Something read from a drawing, in millimetres.</summary>
/// <param name="Line">Line of the file where it starts, from 1.</param>
/// <param name="Layer">Name of its layer.</param>
public abstract record DxfEntity(int Line, string Layer);

/// <summary>A point.</summary>
public sealed record DxfPoint(int Line, string Layer, Place At) : DxfEntity(Line, Layer);

/// <summary>A circle.</summary>
public sealed record DxfCircle(int Line, string Layer, Place Centre, double RadiusMm) : DxfEntity(Line, Layer);

/// <summary>A straight line.</summary>
public sealed record DxfLine(int Line, string Layer, Place From, Place To) : DxfEntity(Line, Layer);

/// <summary>A run of straight lines; bulges are taken as straight. The first place comes again at the end where it is closed.</summary>
public sealed record DxfPolyline(int Line, string Layer, IReadOnlyList<Place> Places) : DxfEntity(Line, Layer);

/// <summary>A text of one or more lines, formatting taken off; lines are parted by a space.</summary>
public sealed record DxfText(int Line, string Layer, Place At, double HeightMm, string Text) : DxfEntity(Line, Layer);

/// <summary>What was read from a drawing.</summary>
/// <param name="Entities">Points, circles, lines and texts, in the order of the file.</param>
/// <param name="Unit">Unit of the file's coordinates, in words.</param>
/// <param name="Skipped">Number of entities of other kinds, which were passed over.</param>
public sealed record DxfDrawing(IReadOnlyList<DxfEntity> Entities, string Unit, int Skipped);
