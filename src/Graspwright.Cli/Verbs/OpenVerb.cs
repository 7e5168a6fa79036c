using System.CommandLine;
using System.Runtime.CompilerServices;
using Graspwright.Cli.Line;
using Graspwright.Page.Serving;
using Graspwright.Page.Signals;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>open HAND</c>: the page, served on this machine for this machine.</summary>
internal sealed class OpenVerb() : Verb("open", "Serve the page of the hand on this computer, and print its address; Ctrl-C ends it.")
{
    private const int LargestPort = 65535;
    private readonly Option<int?> _port = new("--port") { Description = "Port to serve on; 0 = any that is free. Without it 47310, or any if that is taken.", HelpName = "NUMBER" };

    private readonly Option<string[]> _board = new("--board") { Description = "A port of a board that the page may listen to, besides those that it finds by itself.", HelpName = "PORT" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_port);
        command.Add(_board);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        int? port = parsed.GetValue(_port);
        if (port is < 0 or > LargestPort)
        {
            throw new BadInputException(new InputError("command line", 0, 0, "--port", FormattableString.Invariant($"{port}"), FormattableString.Invariant($"0 to {LargestPort}"), "Leave it out."));
        }

        if (Graspwright.Hand.HandFile.Read(path) is { Source: null } reading)
        {
            throw new BadInputException([.. reading.Errors.Select(HandInput.Error)]);
        }

        Serve(path, port, parsed.GetValue(_board) ?? [], terminal).GetAwaiter().GetResult();
        return new(() => "", () => "", ExitCode.Answered);
    }

    /// <summary>Kept apart, so that nothing of the web is loaded for any other verb.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static async Task Serve(string path, int? port, IReadOnlyList<string> boards, Terminal terminal)
    {
        using CancellationTokenSource stop = new();
        Interruption.Finish = stop.Cancel;
        try
        {
            await using PageServer server = await PageServer.Start(path, port, TimeProvider.System, new BoardLines(() => [.. SerialLine.Names().Union(boards, StringComparer.Ordinal)], (name, speed) => SerialLine.Open(name, (uint)speed)));
            terminal.Answers.WriteLine(server.Address);
            terminal.Answers.Flush();
            terminal.Talk.WriteLine("The page is there, for this computer alone. Ctrl-C ends it; what you changed is in the hand file.");
            await server.Run(stop.Token);
        }
        catch (IOException taken)
        {
            throw new BadInputException(new InputError("command line", 0, 0, "--port", $"the port cannot be used ({taken.Message.TrimEnd('.')})", "a free port", "Leave it out, or give --port 0."));
        }
        finally
        {
            Interruption.Finish = null;
        }
    }
}
