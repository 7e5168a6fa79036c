using System.Net;
using System.Net.Sockets;
using Graspwright.Page.Hands;
using Graspwright.Page.Pages;
using Graspwright.Page.Signals;
using Graspwright.Page.Works;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.ResponseCompression;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Graspwright.Page.Serving;

/// <summary>Serves the page of one hand file on this machine alone.</summary>
public sealed class PageServer : IAsyncDisposable
{
    /// <summary>Port asked for first, so that a page that was left open finds the program again.</summary>
    public const int UsualPort = 47310;

    /// <summary>Greatest size of anything sent to the page [bytes].</summary>
    public const int LargestUpload = 1 << 20;
    private readonly WebApplication _application;
    private readonly FileWatch _watch;
    private readonly LongWorks _works;

    private PageServer(WebApplication application, OpenHand open, FileWatch watch, LongWorks works)
    {
        _application = application;
        _works = works;
        _watch = watch;
        Open = open;
        Address = new(application.Services.GetRequiredService<Microsoft.AspNetCore.Hosting.Server.IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
    }

    /// <summary>The open hand.</summary>
    public OpenHand Open { get; }

    /// <summary>Where the page is.</summary>
    public Uri Address { get; }

    /// <summary>Begins to serve.</summary>
    /// <param name="handFile">Path of the hand file.</param>
    /// <param name="port">Port; 0 = any that is free; <see langword="null"/> = the usual one if it is free, else any.</param>
    /// <param name="time">Where the time comes from.</param>
    /// <param name="boards">Ports at which a board may hang; <see langword="null"/> = none.</param>
    /// <exception cref="IOException">The port is taken.</exception>
    public static async Task<PageServer> Start(string handFile, int? port, TimeProvider time, BoardLines? boards = null)
    {
        OpenHand open = new(handFile, time);
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { Args = [], EnvironmentName = "Production", ContentRootPath = AppContext.BaseDirectory });
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.Listen(IPAddress.Loopback, port ?? (IsFree(UsualPort) ? UsualPort : 0));
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = LargestUpload;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
            kestrel.Limits.MinRequestBodyDataRate = new(1000, TimeSpan.FromSeconds(5));
            kestrel.Limits.MaxConcurrentConnections = 100;
        });
        builder.Services.AddResponseCompression(o =>
        {
            o.Providers.Add<BrotliCompressionProvider>();
            o.MimeTypes = ["text/html", "application/json", "text/csv"];
        });
        builder.Services.Configure<HostOptions>(o => o.ShutdownTimeout = TimeSpan.FromSeconds(1));
        builder.Services.AddScoped<HtmlRenderer>();
        WebApplication application = builder.Build();
        application.Use(next => context => Guard.Check(context, next));
        application.UseResponseCompression();
        application.UseWebSockets(new() { KeepAliveInterval = TimeSpan.FromSeconds(15), KeepAliveTimeout = TimeSpan.FromSeconds(15) });
        LongWorks works = new(time);
        works.Moved += w =>
        {
            if (!w.Goes)
            {
                open.Tell();
            }
        };
        HandAnswers answers = new(open, works);
        new Desk(open, answers, boards ?? BoardLines.None, time).Map(application);
        await application.StartAsync();
        _ = answers.Soon(PageTable.All[0].Page.Verb);
        return new(application, open, new(open, time), works);
    }

    /// <summary>Waits until it is stopped.</summary>
    /// <param name="stop">Stops it.</param>
    public async Task Run(CancellationToken stop)
    {
        TaskCompletionSource stopped = new(TaskCreationOptions.RunContinuationsAsynchronously);
        await using CancellationTokenRegistration told = stop.Register(() => stopped.TrySetResult());
        await using CancellationTokenRegistration ended = _application.Lifetime.ApplicationStopping.Register(() => stopped.TrySetResult());
        await stopped.Task;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        _watch.Dispose();
        _works.Dispose();
        await _application.DisposeAsync();
    }

    private static bool IsFree(int port)
    {
        try
        {
            using TcpListener listener = new(IPAddress.Loopback, port);
            listener.Start();
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
