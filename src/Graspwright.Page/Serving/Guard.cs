using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;

namespace Graspwright.Page.Serving;

/// <summary>Who may ask: only pages that this program served, from this machine. And what every reply says to the browser.</summary>
internal static class Guard
{
    private static readonly string[] Names = ["127.0.0.1", "localhost", "[::1]"];

    /// <summary>Refuses what comes from elsewhere, and puts the strict headers on every reply.</summary>
    public static async Task Check(HttpContext context, RequestDelegate next)
    {
        Headers(context);
        if (Refusal(context) is { } why)
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            context.Response.ContentType = "text/plain; charset=utf-8";
            await context.Response.WriteAsync(why);
            return;
        }

        await next(context);
    }

    private static string? Refusal(HttpContext context)
    {
        HttpRequest request = context.Request;
        int port = context.Connection.LocalPort;
        string[] allowed = [.. Names.Select(n => FormattableString.Invariant($"{n}:{port}"))];
        if (!allowed.Contains(request.Host.Value, StringComparer.OrdinalIgnoreCase))
        {
            return "This address is not one of this program's own.";
        }

        string site = request.Headers["Sec-Fetch-Site"].ToString();
        bool changes = !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method);
        if (changes || context.WebSockets.IsWebSocketRequest || request.Headers.Upgrade.Count > 0)
        {
            StringValues origin = request.Headers.Origin;
            return origin.Count == 1 && string.Equals(origin[0], $"http://{request.Host.Value}", StringComparison.OrdinalIgnoreCase) && site is "" or "same-origin"
                ? null
                : "Only a page of this program may ask for that.";
        }

        // Another site may lead here by a link, which only shows a page; it may not take answers or pictures into its own.
        return site is "" or "same-origin" or "none" || request.Headers["Sec-Fetch-Mode"].ToString() == "navigate" ? null : "Only a page of this program may ask for that.";
    }

    private static void Headers(HttpContext context)
    {
        IHeaderDictionary headers = context.Response.Headers;
        string? host = Names.Select(n => FormattableString.Invariant($"{n}:{context.Connection.LocalPort}")).FirstOrDefault(n => n == context.Request.Host.Value);
        headers.ContentSecurityPolicy = $"default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'{(host is null ? "" : $" ws://{host}")}; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=(), payment=(), usb=(), screen-wake-lock=(self)";
        headers.CacheControl = "no-store";
    }
}
