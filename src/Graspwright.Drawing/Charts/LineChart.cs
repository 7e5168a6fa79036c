using Graspwright.Drawing.Display;

namespace Graspwright.Drawing.Charts;

/// <summary>A curve with its name. Places that are not finite break the line.</summary>
/// <param name="Label">Name, written beside the curve's end.</param>
/// <param name="X">Along the horizontal axis.</param>
/// <param name="Y">Along the vertical axis, as many.</param>
/// <param name="Dash">Dash pattern, by which curves are told apart.</param>
/// <param name="Ink">Ink.</param>
/// <param name="WidthMm">Line weight [mm].</param>
public sealed record Series(string Label, IReadOnlyList<double> X, IReadOnlyList<double> Y, Dash Dash = Dash.Solid, Ink Ink = Ink.Ink, double WidthMm = 0.4);

/// <summary>A vertical line where something happened.</summary>
/// <param name="At">Place on the horizontal axis.</param>
/// <param name="Label">What happened.</param>
public sealed record EventLine(double At, string Label);

/// <summary>Curves over one horizontal axis.</summary>
public sealed record LineChart
{
    /// <summary>A sentence above the picture; empty for none.</summary>
    public string Sentence { get; init; } = "";

    /// <summary>What the horizontal axis shows, with its unit: <c>wrist angle, °</c>.</summary>
    public required string XTitle { get; init; }

    /// <summary>What the vertical axis shows, with its unit: <c>grip force, N</c>.</summary>
    public required string YTitle { get; init; }

    /// <summary>The curves.</summary>
    public required IReadOnlyList<Series> Series { get; init; }

    /// <summary>Events.</summary>
    public IReadOnlyList<EventLine> Events { get; init; } = [];

    /// <summary>Least extent of the vertical axis; <see langword="null"/> = from the curves, zero included.</summary>
    public (double Low, double High)? YAtLeast { get; init; }

    /// <summary>Extent of the horizontal axis; <see langword="null"/> = from the curves.</summary>
    public (double Low, double High)? XExtent { get; init; }

    /// <summary>Width of the picture [mm].</summary>
    public double WidthMm { get; init; } = 180;

    /// <summary>Height of the plot itself, without sentence, titles and event labels [mm].</summary>
    public double PlotHeightMm { get; init; } = 60;
}
