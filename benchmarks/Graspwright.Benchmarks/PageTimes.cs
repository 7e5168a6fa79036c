using System.Diagnostics;
using System.Globalization;
using PuppeteerSharp;

namespace Graspwright.Benchmarks;

/// <summary>The page in a real browser: start, weight, and a drag of the fulcrum at sixty moves a second.</summary>
internal static class PageTimes
{
    private const string Chromium = "/usr/bin/chromium";
    private const int Moves = 600, Starts = 5, LongestMilliseconds = 120_000;
    private static readonly string[] Pages = ["drive", "body", "changes", "search", "strength", "pattern", "mould", "clock", "signals"];
    private static readonly TimeSpan BetweenMoves = TimeSpan.FromSeconds(1) / 60;

    private const string Listen =
        """
        () => {
          window.ages = [];
          const scene = document.getElementById("scene");
          scene.addEventListener("painted", (e) => { // told at the beginning of the frame that shows it; a message waits behind that frame
            const after = new MessageChannel();
            after.port1.onmessage = () => ages.push(performance.now() - e.detail);
            after.port2.postMessage(0);
          });
        }
        """;

    private const string Weight = "() => [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')].reduce((sum, e) => sum + e.transferSize, 0)";

    /// <summary>Publishes the program, opens the demo and drags.</summary>
    public static Section Measure()
    {
        string folder = Path.Combine(Repository.Root, "out", "page"), hand = Path.Combine(Directory.CreateTempSubdirectory("graspwright-page-").FullName, "hand.toml");
        foreach (string file in Directory.EnumerateFiles(Path.Combine(Repository.Root, "examples", "boatyard"), "*", SearchOption.AllDirectories))
        {
            string to = Path.Combine(Path.GetDirectoryName(hand)!, Path.GetRelativePath(Path.Combine(Repository.Root, "examples", "boatyard"), file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }

        using (Process publish = Process.Start(new ProcessStartInfo("dotnet", ["publish", Path.Combine("src", "Graspwright.Cli"), "-c", "Release", "-r", "linux-x64", "--self-contained", "false", "-o", folder]) { WorkingDirectory = Repository.Root, UseShellExecute = false, RedirectStandardOutput = true })!)
        {
            publish.StandardOutput.ReadToEnd();
            publish.WaitForExit();
        }

        string program = Path.Combine(folder, "graspwright");
        return Browse(program, hand).GetAwaiter().GetResult();
    }

    private static async Task<Section> Browse(string program, string hand)
    {
        await using IBrowser browser = await Puppeteer.LaunchAsync(new LaunchOptions { ExecutablePath = Chromium, Headless = true, Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"] });
        List<double> starts = [];
        double[] ages = [];
        Dictionary<string, double> weights = new(StringComparer.Ordinal);
        for (int i = 0; i < Starts; i++)
        {
            long begun = Stopwatch.GetTimestamp();
            using Process open = Process.Start(new ProcessStartInfo(program, ["open", hand, "--port", "0"]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
            try
            {
                string address = (await open.StandardOutput.ReadLineAsync())!;
                await using (IPage first = await Page(browser, address))
                {
                    starts.Add(Stopwatch.GetElapsedTime(begun).TotalSeconds);
                }

                if (i == Starts - 1)
                {
                    ages = await Drag(browser, address);
                    foreach (string name in Pages)
                    {
                        await using IPage page = await Page(browser, address + name);
                        await page.WaitForFunctionAsync("() => !document.querySelector('[data-waits]') && document.getElementById('solid')?.dataset.of !== ''", new WaitForFunctionOptions { Timeout = LongestMilliseconds });
                        weights[name] = await page.EvaluateFunctionAsync<double>(Weight);
                    }
                }
            }
            finally
            {
                open.Kill();
            }
        }

        Array.Sort(ages);
        return new("The page", $"`open` on the demo, compiled ahead of time, in headless Chromium on the same machine. From the start of the process to the first page with its line open; what a page weighs on the wire with an empty store; the fulcrum dragged with real mouse events, {Moves.ToString(CultureInfo.InvariantCulture)} moves at 60 a second, four objects: from the pointer's event to just after the frame that shows its curves.",
        [
            Row.AtMost("start to first usable page, median", Timing.Over(starts).Median, 1.5, 1, "s"),
            Row.AtMost("move to frame, 95 of 100", Share(ages, 0.95) / 1000, 0.033, 1000, "ms"),
            new("move to frame, half of them", $"{Row.Number(Share(ages, 0.5))} ms"),
            Row.AtMost("move to frame, latest that was shown", ages[^1] / 1000, 0.1, 1000, "ms"),
            new("moves that were drawn; the rest were overtaken by newer ones", $"{ages.Length.ToString(CultureInfo.InvariantCulture)} of {Moves.ToString(CultureInfo.InvariantCulture)}"),
            Row.AtMost("drive page on the wire", weights["drive"], 500_000, 0.001, "kB"),
            .. weights.Where(w => w.Key != "drive").Select(w => Row.AtMost($"{w.Key} page on the wire", w.Value, 200_000, 0.001, "kB")),
        ]);
    }

    private static async Task<IPage> Page(IBrowser browser, string address)
    {
        IBrowserContext context = await browser.CreateBrowserContextAsync();
        IPage page = await context.NewPageAsync();
        await page.SetViewportAsync(new() { Width = 1440, Height = 1000 });
        await page.GoToAsync(address);
        await page.WaitForSelectorAsync("html[data-line=open]");
        return page;
    }

    private static async Task<double[]> Drag(IBrowser browser, string address)
    {
        await using IPage page = await Page(browser, address + "drive");
        await page.WaitForFunctionAsync("() => document.querySelector('.scene.ready') && !document.getElementById('grab').hidden");
        await page.EvaluateFunctionAsync("() => document.getElementById('grab').scrollIntoView({ block: 'center' })");
        double[] at = await page.EvaluateFunctionAsync<double[]>("() => { const b = document.getElementById('grab').getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2]; }");
        await page.Mouse.MoveAsync((decimal)at[0], (decimal)at[1]);
        await page.Mouse.DownAsync();
        await Circle(page, at, Moves / 5); // the first moves compile what they need
        await page.EvaluateFunctionAsync(Listen);
        await Circle(page, at, Moves);
        await page.Keyboard.PressAsync("Escape");
        return await page.EvaluateExpressionAsync<double[]>("ages");
    }

    private static async Task Circle(IPage page, double[] at, int moves)
    {
        using PeriodicTimer clock = new(BetweenMoves);
        for (int i = 0; i < moves && await clock.WaitForNextTickAsync(); i++)
        {
            double angle = Math.Tau * i / 120;
            _ = page.Mouse.MoveAsync((decimal)(at[0] + 8 * Math.Sin(angle)), (decimal)(at[1] + 8 * (1 - Math.Cos(angle))));
        }
    }

    private static double Share(double[] sorted, double share) => sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];
}
