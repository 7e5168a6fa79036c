namespace Graspwright.Cli;

/// <summary>What the program gives back to the shell.</summary>
internal static class ExitCode
{
    /// <summary>An answer was printed.</summary>
    public const int Answered = 0;

    /// <summary>Bad input, wrong options included.</summary>
    public const int BadInput = 2;

    /// <summary>Our fault, or the one thing asked for could not be solved.</summary>
    public const int Failed = 3;

    /// <summary>Stopped by the user.</summary>
    public const int Stopped = 130;
}
