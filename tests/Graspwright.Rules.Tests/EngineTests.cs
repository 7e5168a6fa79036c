namespace Graspwright.Rules.Tests;

/// <summary>Engines are pure: numbers in, numbers out.</summary>
public sealed class EngineTests
{
    [Theory]
    [InlineData("Graspwright.Numerics.dll")]
    [InlineData("Graspwright.Mechanics.dll")]
    [InlineData("Graspwright.Strength.dll")]
    [InlineData("Graspwright.Moulding.dll")]
    [InlineData("Graspwright.Form.dll")]
    [InlineData("Graspwright.Signals.dll")]
    [InlineData("Graspwright.Deciding.dll")]
    public void An_engine_knows_no_file_screen_clock_chance_or_culture(string assembly) =>
        Rule.Holds(AssemblyUse.OfTheOutside(Path.Combine(AppContext.BaseDirectory, assembly)));

    [Fact]
    public void The_reading_of_assemblies_finds_what_these_rules_themselves_use()
    {
        IReadOnlyList<string> found = AssemblyUse.OfTheOutside(typeof(EngineTests).Assembly.Location);
        Assert.Contains("System.IO.File", found);
        Assert.Contains("System.AppContext", found);
        Assert.Contains("System.Random..ctor()", found);
        Assert.NotEqual(new Random().NextInt64(), new Random().NextInt64()); // the unseeded chance that must be found
    }
}
