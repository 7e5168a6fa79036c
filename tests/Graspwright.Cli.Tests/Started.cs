using System.Diagnostics;

namespace Graspwright.Cli.Tests;

/// <summary>The program, started as a user starts it.</summary>
/// <param name="Code">Exit code.</param>
/// <param name="Answers">Standard output.</param>
/// <param name="Talk">Standard error.</param>
internal sealed record Started(int Code, string Answers, string Talk)
{
    public static string Demo { get; } = Path.Combine(Root(), "examples", "boatyard", "hand.toml");

    public static string Dll { get; } = Path.Combine(AppContext.BaseDirectory, "graspwright.dll");

    public static Started Run(params string[] args) => Run([], args);

    public static Started Run(Dictionary<string, string> environment, params string[] args) => Through("dotnet", environment, [Dll, .. args]);

    public static Started Through(string program, params string[] args) => Through(program, [], args);

    private static Started Through(string program, Dictionary<string, string> environment, string[] args)
    {
        ProcessStartInfo start = new(program, args)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
            StandardErrorEncoding = System.Text.Encoding.UTF8,
        };
        foreach ((string name, string value) in environment)
        {
            start.Environment[name] = value;
        }

        using Process process = Process.Start(start)!;
        Task<string> talk = process.StandardError.ReadToEndAsync();
        string answers = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new(process.ExitCode, answers, talk.GetAwaiter().GetResult());
    }

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Graspwright.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("The solution's folder is not above the tests.");
    }
}
