using System.Text;

namespace Graspwright.Cli;

/// <summary>Where answers and talk go: answers to standard output, talk to standard error, both UTF-8.</summary>
internal sealed class Terminal : IDisposable
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly StreamWriter _answers = new(Console.OpenStandardOutput(), Utf8, bufferSize: 1 << 16);
    private readonly StreamWriter _talk = new(Console.OpenStandardError(), Utf8) { AutoFlush = true };

    /// <summary>Writer of answers.</summary>
    public TextWriter Answers => _answers;

    /// <summary>Writer of talk.</summary>
    public TextWriter Talk => _talk;

    /// <inheritdoc/>
    public void Dispose()
    {
        _answers.Dispose();
        _talk.Dispose();
    }
}
