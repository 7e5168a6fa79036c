using System.Globalization;
using System.Text;
using System.Text.Json;
using Graspwright.Hand;
using Graspwright.Page.Hands;
using Graspwright.Page.Pages;
using Graspwright.Page.Shown;
using Graspwright.Page.Signals;
using Graspwright.Workshop.Results;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Graspwright.Page.Serving;

/// <summary>Answers the requests: pages, the same as JSON, edits, taking back, the pages' own forms.</summary>
internal sealed class Desk(OpenHand open, HandAnswers answers, BoardLines boards, TimeProvider time)
{
    private static readonly TimeSpan LongestUpload = TimeSpan.FromSeconds(20);
    private readonly Lines _lines = new(open, answers.Works);

    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/", (RequestDelegate)(context => { context.Response.Redirect("/" + PageTable.All[0].Page.Address); return Task.CompletedTask; }));
        routes.MapGet("/own/{sum}/{name}", (RequestDelegate)(context => OwnFiles.Send(context, Route(context, "sum"), Route(context, "name"))));
        routes.MapGet("/line", (RequestDelegate)(context => _lines.Take(context, address => Body(context, address))));
        routes.MapGet("/{page}", (RequestDelegate)(context => Show(context, Route(context, "page"))));
        routes.MapGet("/{page}/{part}", (RequestDelegate)(context => Part(context, Route(context, "page"), Route(context, "part"))));
        routes.MapPost("/works/stop", (RequestDelegate)(context => Post(context, StopWork)));
        routes.MapPost("/edit", (RequestDelegate)(context => Post(context, Edit)));
        routes.MapPost("/undo", (RequestDelegate)(context => Post(context, _ => open.Undo())));
        routes.MapPost("/redo", (RequestDelegate)(context => Post(context, _ => open.Redo())));
        routes.MapPost("/settle", (RequestDelegate)(context => Post(context, sent => open.Settle(int.TryParse(sent["number"], NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : 0, sent["take"] == "other"))));
        routes.MapPost("/{page}/act/{what}", (RequestDelegate)(context => Post(context, sent => Body(context, Route(context, "page"))?.Act(Route(context, "what"), sent))));
    }

    private static string Route(HttpContext context, string name) => context.Request.RouteValues[name] as string ?? "";

    private PageBody? Body(HttpContext context, string address)
    {
        if (PageTable.Find(address) is not { } found)
        {
            return null;
        }

        PageBody body = (PageBody)Activator.CreateInstance(found.Body)!;
        body.Visit = Look(context, found.Page);
        return body;
    }

    private Visit Look(HttpContext context, WorkPageAttribute page) =>
        new(open, answers, page, context.Request.Query.ToDictionary(q => q.Key, q => q.Value.ToString(), StringComparer.Ordinal), time.GetLocalNow()) { Boards = boards };

    private async Task Show(HttpContext context, string name)
    {
        if (name.EndsWith(".json", StringComparison.Ordinal) && PageTable.Find(name[..^5]) is { } asked)
        {
            await Json(context, asked.Page.Verb);
            return;
        }

        if (PageTable.Find(name) is not { } found)
        {
            await NotHere(context);
            return;
        }

        Visit visit = Look(context, found.Page);
        HtmlRenderer renderer = context.RequestServices.GetRequiredService<HtmlRenderer>();
        string html = await renderer.Dispatcher.InvokeAsync(async () =>
        {
            ParameterView parameters = ParameterView.FromDictionary(new Dictionary<string, object?>(StringComparer.Ordinal) { ["Visit"] = visit, ["Body"] = found.Body });
            return (await renderer.RenderComponentAsync<Document>(parameters)).ToHtmlString();
        });
        context.Response.ContentType = "text/html; charset=utf-8";
        await context.Response.WriteAsync(html);
    }

    private async Task Part(HttpContext context, string page, string part)
    {
        string name = Path.GetFileNameWithoutExtension(part);
        if (Body(context, page)?.Give(part) is { } given)
        {
            context.Response.ContentType = given.Kind;
            if (given.Name.Length > 0)
            {
                context.Response.Headers.ContentDisposition = $"attachment; filename=\"{given.Name}\"";
            }

            await context.Response.Body.WriteAsync(given.Bytes);
            return;
        }

        if (PageTable.Find(page) is not { } found || (name != found.Page.Verb && !found.Page.Also.Contains(name, StringComparer.Ordinal)))
        {
            await NotHere(context);
            return;
        }

        switch (Path.GetExtension(part))
        {
            case ".json":
                await Json(context, name);
                return;
            case ".csv" when answers.Of(name).Answer is { } answer && Tables(answer).FirstOrDefault(t => t.Name == context.Request.Query["table"].ToString()) is { } table:
                context.Response.ContentType = "text/csv; charset=utf-8";
                context.Response.Headers.ContentDisposition = $"attachment; filename=\"{name}.csv\"";
                await context.Response.WriteAsync(CsvTable.Write(table));
                return;
            default:
                await NotHere(context);
                return;
        }
    }

    private static IEnumerable<Table> Tables(Answer answer) => answer.Tables.Concat(answer.Situations.SelectMany(s => s.Tables));

    private async Task Json(HttpContext context, string verb)
    {
        context.Response.ContentType = "application/json; charset=utf-8";
        await context.Response.WriteAsync(answers.Of(verb).Json());
    }

    private static Task NotHere(HttpContext context)
    {
        context.Response.StatusCode = StatusCodes.Status404NotFound;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync($"There is no such page. There are: {string.Join(", ", PageTable.All.Select(p => "/" + p.Page.Address))}.");
    }

    private Outcome Edit(Sent sent)
    {
        IReadOnlyList<string> paths = sent.All("path"), values = sent.All("value"), seen = sent.All("seen");
        if (paths.Count == 0 || values.Count != paths.Count)
        {
            return new([new(open.Path, 0, 0, "", "no value", "a path with its value", "fill in the field")]);
        }

        return open.Edit([.. paths.Select((p, i) => new PathValue(p, values[i], i < seen.Count ? seen[i] : null))], sent["words"] is { Length: > 0 } words ? words : string.Join(", ", paths));
    }

    private Outcome StopWork(Sent sent)
    {
        answers.Works.Find(sent["key"])?.End();
        return Outcome.Done;
    }

    private static async Task Post(HttpContext context, Func<Sent, Outcome?> act)
    {
        using CancellationTokenSource late = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted);
        late.CancelAfter(LongestUpload);
        Sent? sent = await Read(context, late.Token);
        if (sent is null)
        {
            context.Response.StatusCode = StatusCodes.Status415UnsupportedMediaType;
            await context.Response.WriteAsync("A form is wanted here, with at most one text file of a megabyte.");
            return;
        }

        if (act(sent) is not { } outcome)
        {
            await NotHere(context);
            return;
        }

        if (context.Request.Headers.Accept.ToString().Contains("application/json", StringComparison.Ordinal))
        {
            context.Response.ContentType = "application/json; charset=utf-8";
            await context.Response.WriteAsync(Words(outcome), CancellationToken.None);
            return;
        }

        string back = sent["back"];
        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = PageTable.All.Any(p => back == "/" + p.Page.Address || back.StartsWith($"/{p.Page.Address}?", StringComparison.Ordinal) || back.StartsWith($"/{p.Page.Address}#", StringComparison.Ordinal)) ? back : "/";
    }

    private static async Task<Sent?> Read(HttpContext context, CancellationToken late)
    {
        if (!context.Request.HasFormContentType)
        {
            return context.Request.ContentLength is null or 0 ? new([], null) : null;
        }

        try
        {
            FormOptions limits = new() { ValueCountLimit = 4096, ValueLengthLimit = 1 << 16, MultipartBodyLengthLimit = PageServer.LargestUpload, BufferBodyLengthLimit = PageServer.LargestUpload };
            IFormCollection form = await new FormFeature(context.Request, limits).ReadFormAsync(late);
            string? upload = null;
            if (form.Files.Count > 0 && form.Files[0] is { Length: > 0 } file)
            {
                string takes = PageTable.Find(Route(context, "page"))?.Page.Takes ?? ".csv";
                if (!file.FileName.EndsWith(takes, StringComparison.OrdinalIgnoreCase))
                {
                    return null;
                }

                using StreamReader reader = new(file.OpenReadStream(), new UTF8Encoding(false, throwOnInvalidBytes: true));
                upload = await reader.ReadToEndAsync(late);
            }

            return new([.. form.SelectMany(v => v.Value.Select(one => new KeyValuePair<string, string>(v.Key, one ?? "")))], upload);
        }
        catch (Exception refusal) when (refusal is InvalidDataException or DecoderFallbackException or BadHttpRequestException)
        {
            return null;
        }
    }

    private static string Words(Outcome outcome)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream))
        {
            json.WriteStartObject();
            json.WriteBoolean("done", outcome.IsDone);
            json.WriteStartArray("errors");
            foreach (HandError error in outcome.Errors)
            {
                json.WriteStringValue(HandAnswers.Error(error).Text);
            }

            json.WriteEndArray();
            if (outcome.Conflict is { } two)
            {
                json.WriteString("conflict", $"{two.Path}: the file has {two.InFile}, you gave {two.Other}.");
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
