using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests;

/// <summary>Evaluates what answers print: every formula on its printed inputs gives the printed value.</summary>
internal static class PrintedFormulas
{
    public static void GiveTheirValues(IEnumerable<Figure> figures)
    {
        int seen = 0;
        foreach (Figure figure in figures.Where(f => f.Value is not null))
        {
            double worked = FormulaText.Evaluate(figure.Working!.Formula, figure.Working.Inputs.ToDictionary(i => i.Name, i => i.Value));
            Assert.True(Math.Abs(worked - figure.Value!.Value) <= 1e-5 * Math.Max(1, Math.Abs(worked)), $"{figure.Key}: {worked} against {figure.Value}");
            seen++;
        }

        Assert.True(seen > 0, "No figure had a value.");
    }
}
