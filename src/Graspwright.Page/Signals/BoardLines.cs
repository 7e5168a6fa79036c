namespace Graspwright.Page.Signals;

/// <summary>The ports at which a board may hang, and how one is opened. Nothing else can be opened from the page.</summary>
/// <param name="Names">Names of the ports that are there now.</param>
/// <param name="Open">Opens one of them for reading at a speed [bit/s]; throws <see cref="IOException"/> or <see cref="UnauthorizedAccessException"/> where it cannot.</param>
public sealed record BoardLines(Func<IReadOnlyList<string>> Names, Func<string, double, Stream> Open)
{
    /// <summary>No port at all.</summary>
    public static BoardLines None { get; } = new(() => [], (port, _) => throw new IOException($"no port {port}"));
}
