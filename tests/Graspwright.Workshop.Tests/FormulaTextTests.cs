namespace Graspwright.Workshop.Tests;

public sealed class FormulaTextTests
{
    [Theory]
    [InlineData("2 + 3·4", 14)]
    [InlineData("(2 + 3)·4", 20)]
    [InlineData("2^3^2/8", 64)]
    [InlineData("-a + 10 - 1", 6)]
    [InlineData("33.55·(b/1)^(-1.61)", 33.55 * 8.0)]
    [InlineData("max(a, 7, 2)·cos(0)", 7)]
    [InlineData("sqrt(a^2 + 4^2)", 5)]
    [InlineData("180/π·π", 180)]
    public void Reads_a_formula_as_a_bench_book_does(string formula, double expected)
    {
        Dictionary<string, double> inputs = new() { ["a"] = 3, ["b"] = Math.Pow(8, -1 / 1.61) };
        Assert.Equal(expected, FormulaText.Evaluate(formula, inputs), 1e-12 * expected);
    }

    [Theory]
    [InlineData("2 + ")]
    [InlineData("(2")]
    [InlineData("2 3x")]
    public void Refuses_what_is_no_formula(string formula) =>
        Assert.ThrowsAny<Exception>(() => FormulaText.Evaluate(formula, new Dictionary<string, double>()));
}
