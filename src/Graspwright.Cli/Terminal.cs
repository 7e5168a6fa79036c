namespace Graspwright.Cli;

/// <summary>Where answers and talk go: answers to standard output, talk to standard error, both UTF-8.</summary>
/// <param name="answers">Writer of answers.</param>
/// <param name="talk">Writer of talk.</param>
internal sealed class Terminal(TextWriter answers, TextWriter talk)
{
    /// <summary>Writer of answers.</summary>
    public TextWriter Answers { get; } = answers;

    /// <summary>Writer of talk.</summary>
    public TextWriter Talk { get; } = talk;
}
