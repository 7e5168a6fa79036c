using Graspwright.Drawing.Display;

namespace Graspwright.Book.Pages;

/// <summary>A size of paper.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="WidthMm">Width [mm].</param>
/// <param name="HeightMm">Height [mm].</param>
public sealed record Paper(string Name, double WidthMm, double HeightMm)
{
    /// <summary>A4, 210 mm × 297 mm.</summary>
    /// <source key="iso-216">Main series A.</source>
    public static Paper A4 { get; } = new("A4", Picture.A4WidthMm, Picture.A4HeightMm);

    /// <summary>Letter, 8½ in × 11 in.</summary>
    public static Paper Letter { get; } = new("Letter", 8.5 * 25.4, 11 * 25.4);

    /// <summary>Every size.</summary>
    public static IReadOnlyList<Paper> All { get; } = [A4, Letter];

    /// <summary>The sheet turned on its side.</summary>
    public Paper Turned => this with { WidthMm = HeightMm, HeightMm = WidthMm };

    /// <summary>Finds a size by name, whatever the case of the letters; <see langword="null"/> where there is none.</summary>
    /// <param name="name">The name.</param>
    public static Paper? Find(string name) => All.FirstOrDefault(p => p.Name.Equals(name, StringComparison.OrdinalIgnoreCase));
}
