namespace Graspwright.Cli;

/// <summary>Ends the program cleanly when the user stops it: no half-written file stays behind.</summary>
internal static class Interruption
{
    private static volatile string? s_unfinished;
    private static volatile Action? s_finish;

    /// <summary>File being written under its temporary name; <see langword="null"/> = none.</summary>
    public static string? Unfinished
    {
        get => s_unfinished;
        set => s_unfinished = value;
    }

    /// <summary>What is said when the user stops.</summary>
    public static string Farewell { get; set; } = "Stopped. Nothing was left half-written.";

    /// <summary>What ends the work in hand by itself, keeping what it has; <see langword="null"/> = the program ends at once.</summary>
    public static Action? Finish
    {
        get => s_finish;
        set => s_finish = value;
    }

    /// <summary>Listens for the user's stop.</summary>
    /// <param name="terminal">Where to say so.</param>
    public static void Listen(Terminal terminal) => Console.CancelKeyPress += (_, press) =>
    {
        press.Cancel = true;
        if (Finish is { } finish)
        {
            finish();
            return;
        }

        if (Unfinished is { } file)
        {
            File.Delete(file);
        }

        terminal.Talk.WriteLine(Farewell);
        Environment.Exit(ExitCode.Stopped);
    };
}
