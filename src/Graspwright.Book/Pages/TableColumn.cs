namespace Graspwright.Book.Pages;

/// <summary>A column of a table on paper.</summary>
/// <param name="Head">Head of the column, with the unit: <c>wrist, °</c>.</param>
/// <param name="WidthMm">Width [mm]; 0 = as wide as its text needs.</param>
/// <param name="Right">Whether its text stands at the right, as numbers should.</param>
public sealed record TableColumn(string Head, double WidthMm = 0, bool Right = false);
