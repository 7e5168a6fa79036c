using System.Globalization;
using System.Reflection;
using Graspwright.Page.Serving;
using PuppeteerSharp;

[assembly: AssemblyFixture(typeof(Graspwright.Page.Browser.Tests.Chromium))]

namespace Graspwright.Page.Browser.Tests;

/// <summary>One browser for all tests; they are skipped where there is none.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private const string Program = "/usr/bin/chromium";
    private static readonly string[] Switches =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars"];

    /// <summary>When a state that never comes is given up; a machine under load is slow, not wrong.</summary>
    private const int LongestMilliseconds = 60_000;

    private IBrowser? _browser;

    /// <summary>The source of axe-core, which scans a page for barriers.</summary>
    internal static string Axe { get; } = ReadAxe();

    public async ValueTask InitializeAsync()
    {
        if (!File.Exists(Program))
        {
            await Console.Error.WriteLineAsync("No chromium: the page is not tested in a browser. As root, ./test installs it; else: apt-get install chromium.");
            return;
        }

        _browser = await Puppeteer.LaunchAsync(new LaunchOptions { ExecutablePath = Program, Headless = true, Args = Switches });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.CloseAsync();
        }
    }

    /// <summary>A fresh page of the browser, with nothing remembered from another test.</summary>
    internal async Task<Visited> Visit(PageServer server, string path, int width = 1440, bool dark = false)
    {
        Assert.SkipWhen(_browser is null, "There is no chromium.");
        IBrowserContext context = await _browser!.CreateBrowserContextAsync();
        IPage page = await context.NewPageAsync();
        page.DefaultTimeout = LongestMilliseconds;
        Visited visited = new(context, page);
        await page.SetViewportAsync(new() { Width = width, Height = 1000 });
        await page.EmulateMediaFeaturesAsync([new() { MediaFeature = PuppeteerSharp.MediaFeature.PrefersColorScheme, Value = dark ? "dark" : "light" }]);
        await page.GoToAsync(new Uri(server.Address, path).ToString());
        await page.WaitForSelectorAsync("html[data-line=open]");
        return visited;
    }

    private static string ReadAxe()
    {
        Assembly assembly = Assembly.Load("Deque.AxeCore.Commons");
        string name = assembly.GetManifestResourceNames().Single(n => n.EndsWith("axe.min.js", StringComparison.Ordinal));
        using StreamReader reader = new(assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }
}

/// <summary>A page that is looked at, with everything it complained of and every address it asked for.</summary>
internal sealed class Visited : IAsyncDisposable
{
    private readonly IBrowserContext _context;
    private readonly List<string> _complaints = [];
    private readonly List<string> _asked = [];

    public Visited(IBrowserContext context, IPage page)
    {
        _context = context;
        Page = page;
        page.Console += (_, e) =>
        {
            if (e.Message.Type is ConsoleType.Error or ConsoleType.Warning)
            {
                _complaints.Add(e.Message.Text);
            }
        };
        page.PageError += (_, e) => _complaints.Add(e.Message);
        page.Request += (_, e) => _asked.Add(e.Request.Url);
    }

    public IPage Page { get; }

    public IReadOnlyList<string> Complaints => _complaints;

    public IReadOnlyList<string> Asked => _asked;

    public async ValueTask DisposeAsync() => await _context.CloseAsync();

    /// <summary>Waits until a condition of the page holds.</summary>
    public Task Until(string script, params object[] arguments) => Page.WaitForFunctionAsync(script, new WaitForFunctionOptions { PollingInterval = 20 }, arguments);

    /// <summary>Middle of an element on the screen.</summary>
    public async Task<(decimal X, decimal Y)> Middle(string selector)
    {
        await Page.EvaluateFunctionAsync("s => document.querySelector(s).scrollIntoView({ block: 'center' })", selector);
        double[] at = await Page.EvaluateFunctionAsync<double[]>("s => { const b = document.querySelector(s).getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2]; }", selector);
        return ((decimal)at[0], (decimal)at[1]);
    }

    public async Task<string> Text(string selector) => (await Page.EvaluateFunctionAsync<string>("s => document.querySelector(s).textContent", selector)).Trim();

    /// <summary>Barriers that axe-core finds, by the rules of WCAG 2.2 A and AA.</summary>
    public async Task<string[]> Barriers()
    {
        await Page.EvaluateExpressionAsync(Chromium.Axe);
        return await Page.EvaluateFunctionAsync<string[]>(
            "async () => { const r = await axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }); return r.violations.map(v => v.id + ': ' + v.nodes.slice(0, 3).map(n => n.html.slice(0, 160)).join(' | ')); }");
    }

    /// <summary>Writes a picture where somebody wants to look at it.</summary>
    public async Task Picture(string name)
    {
        if (Environment.GetEnvironmentVariable("PAGE_PICTURES") is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
            await Page.ScreenshotAsync(Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{name}.png")), new ScreenshotOptions { FullPage = true });
        }
    }
}
