using System.Globalization;
using System.Text;

namespace Graspwright.Hand.Tests;

public sealed class MaterialPageTests
{
    private const string Start = "<!-- table of materials: printed by a test -->", End = "<!-- end of the table -->";

    [Fact]
    public void The_page_shows_the_table_of_materials_as_it_is()
    {
        DirectoryInfo? root = new(AppContext.BaseDirectory);
        while (root is not null && !File.Exists(Path.Combine(root.FullName, "Graspwright.slnx")))
        {
            root = root.Parent;
        }

        Assert.NotNull(root);
        string file = Path.Combine(root.FullName, "docs", "strength.md"), text = File.ReadAllText(file).ReplaceLineEndings("\n");
        int from = text.IndexOf(Start, StringComparison.Ordinal) + Start.Length, to = text.IndexOf(End, StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable("GRASPWRIGHT_WRITE_DOCS") == "1")
        {
            text = text[..from] + Table() + text[to..];
            File.WriteAllText(file, text);
            to = text.IndexOf(End, StringComparison.Ordinal);
        }

        Assert.Equal(Table(), text[from..to]);
    }

    private static string Table()
    {
        StringBuilder table = new("\n\n| name | what | E GPa | yield MPa | strength MPa | fatigue MPa at cycles | slope | notch q | shear ÷ strength | lost outdoors, year | spread of strength | spread of log₁₀ life | pin pressure MPa | friction | wear | sources |\n|---|---|---|---|---|---|---|---|---|---|---|---|---|---|---|---|\n");
        foreach (Material m in MaterialTable.All)
        {
            table.Append(CultureInfo.InvariantCulture, $"| `{m.Name}` | {m.Words}{(m.Brittle ? "; breaks at once" : "")} | {m.Modulus / 1e9:0.##} | {m.Yield / 1e6:0.#} | {m.Strength / 1e6:0.#} | {m.FatigueStrength / 1e6:0.##} at {m.FatigueCycles:0.#e0} | {(m.FatigueSlope > 0 ? m.FatigueSlope.ToString("0.#", CultureInfo.InvariantCulture) : "from 0.9")} | {m.NotchSensitivity:0.##} | {m.ShearShare:0.##} | {100 * m.OutdoorLoss:0} % | {100 * m.StrengthSpread:0} % | {m.LifeSpread:0.##} | {m.BearingLimit / 1e6:0.#} | {m.Friction:0.##} | {m.Wear:0.##} | {string.Join(", ", m.SourceKeys.Select(k => $"`{k}`"))} |\n");
        }

        return table.Append('\n').ToString();
    }
}
