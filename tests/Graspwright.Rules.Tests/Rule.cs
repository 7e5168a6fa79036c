namespace Graspwright.Rules.Tests;

/// <summary>A rule holds where nothing breaks it.</summary>
internal static class Rule
{
    /// <summary>Fails with every breach, one a line.</summary>
    /// <param name="breaches">What breaks the rule.</param>
    public static void Holds(IEnumerable<string> breaches)
    {
        string[] found = [.. breaches];
        Assert.True(found.Length == 0, string.Join('\n', found));
    }
}
