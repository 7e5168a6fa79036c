using System.Net;
using System.Net.WebSockets;
using System.Text;
using System.Text.RegularExpressions;
using Graspwright.Hand;
using Graspwright.Page.Pages;
using Graspwright.Page.Serving;
using Graspwright.Page.Works;
using Graspwright.Workshop.Changes;
using Graspwright.Workshop.Form;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Results;

namespace Graspwright.Page.Tests.Serving;

public sealed partial class PageServerTests : IAsyncLifetime
{
    private readonly DemoHand _demo = new();
    private readonly HttpClient _client = new(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false });
    private PageServer _server = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => _server = await PageServer.Start(_demo.File, 0, TimeProvider.System);

    public async ValueTask DisposeAsync()
    {
        await _server.DisposeAsync();
        _client.Dispose();
        _demo.Dispose();
    }

    public static TheoryData<string> Pages => [.. PageTable.All.Select(p => p.Page.Address)];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Every_page_is_served_with_strict_headers_and_nothing_inline(string address)
    {
        using HttpResponseMessage reply = await _client.GetAsync(At("/" + address), Stop);
        string html = await reply.Content.ReadAsStringAsync(Stop);
        Assert.Equal(HttpStatusCode.OK, reply.StatusCode);
        string policy = string.Join(' ', reply.Headers.GetValues("Content-Security-Policy"));
        Assert.StartsWith("default-src 'none'; script-src 'self'; style-src 'self';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(reply.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("DENY", Assert.Single(reply.Headers.GetValues("X-Frame-Options")));
        Assert.False(reply.Headers.Contains("Server"));
        Assert.False(reply.Headers.Contains("Set-Cookie"));
        Assert.All(Scripts().Matches(html), m => Assert.Contains("src=\"/own/", m.Value, StringComparison.Ordinal));
        Assert.DoesNotMatch(InlineCode(), html);
        Assert.DoesNotMatch(Outside(), html);
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Json_behind_the_address_is_what_the_verb_prints(string address)
    {
        WorkPageAttribute page = PageTable.Find(address)!.Value.Page;
        using LongWorks works = new(TimeProvider.System);
        HandAnswers answers = new(_server.Open, works);
        Assert.Equal(answers.Of(page.Verb).Json(), await _client.GetStringAsync(At($"/{address}.json"), Stop));
        foreach (string also in page.Also)
        {
            Assert.Equal(answers.Of(also).Json(), await _client.GetStringAsync(At($"/{address}/{also}.json"), Stop));
        }
    }

    [Fact]
    public async Task The_drive_gives_the_object_of_grip()
    {
        string expected = JsonAnswer.Write(Gripping.Answer(new(_server.Open.State.Hand!) { File = _demo.File }).Answer!);
        Assert.Equal(expected, await _client.GetStringAsync(At("/drive.json"), Stop));
    }

    [Fact]
    public async Task Changes_and_form_give_the_objects_of_their_engines()
    {
        HandEditor editor = HandEditor.Open(_server.Open.State.Reading, _demo.Folder)!;
        Assert.Equal(JsonAnswer.Write(Changing.Answer(new(editor) { File = _demo.File }).Answer!), await _client.GetStringAsync(At("/changes.json"), Stop));
        Assert.Equal(JsonAnswer.Write(FormAnswer.Of(_server.Open.State.Hand!, _demo.File, stop: TestContext.Current.CancellationToken).Answer!), await _client.GetStringAsync(At("/pattern/form.json"), Stop));
    }

    [Fact]
    public void It_listens_on_this_machine_alone() => Assert.True(IPAddress.IsLoopback(IPAddress.Parse(_server.Address.Host)));

    [Theory]
    [InlineData("evil.example")]
    [InlineData("evil.example:80")]
    [InlineData("127.0.0.1")]
    public async Task Another_host_is_refused(string host)
    {
        using HttpRequestMessage request = new(HttpMethod.Get, At("/drive")) { Headers = { Host = host } };
        using HttpResponseMessage reply = await _client.SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.Forbidden, reply.StatusCode);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("null")]
    [InlineData("http://evil.example")]
    [InlineData("https://127.0.0.1")]
    public async Task An_edit_from_elsewhere_is_refused(string? origin)
    {
        string before = _demo.Text;
        using HttpResponseMessage reply = await Post("/edit", origin, ("path", "crank.fulcrum.x"), ("value", "23 mm"));
        Assert.Equal(HttpStatusCode.Forbidden, reply.StatusCode);
        Assert.Equal(before, _demo.Text);
    }

    [Fact]
    public async Task An_edit_of_the_page_itself_goes_into_the_file_and_back_to_the_page()
    {
        using HttpResponseMessage reply = await Post("/edit", Own, ("path", "crank.fulcrum.x"), ("value", "23 mm"), ("back", "/drive"));
        Assert.Equal(HttpStatusCode.SeeOther, reply.StatusCode);
        Assert.Equal("/drive", reply.Headers.Location!.OriginalString);
        Assert.Contains("[\"23 mm\"", _demo.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_way_back_leads_nowhere_else()
    {
        using HttpResponseMessage reply = await Post("/undo", Own, ("back", "//evil.example/drive"));
        Assert.Equal("/", reply.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task A_refused_value_is_answered_beside_its_field()
    {
        using HttpResponseMessage reply = await Post("/edit", Own, ("path", "crank.fulcrum.x"), ("value", "23"), ("back", "/drive"));
        string html = WebUtility.HtmlDecode(await _client.GetStringAsync(At("/drive"), Stop));
        Assert.Contains("aria-invalid=\"true\"", html, StringComparison.Ordinal);
        Assert.Contains("write \"23 mm\"", html.Replace('’', '\''), StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("http://evil.example")]
    [InlineData(null)]
    public async Task A_line_from_elsewhere_is_refused(string? origin)
    {
        using ClientWebSocket socket = new();
        if (origin is not null)
        {
            socket.Options.SetRequestHeader("Origin", origin);
        }

        await Assert.ThrowsAsync<WebSocketException>(() => socket.ConnectAsync(new($"ws://{_server.Address.Authority}/line?page=drive"), Stop));
    }

    [Fact]
    public async Task Of_questions_that_wait_the_newest_is_answered()
    {
        using ClientWebSocket socket = new();
        socket.Options.SetRequestHeader("Origin", Own);
        await socket.ConnectAsync(new($"ws://{_server.Address.Authority}/line?page=drive"), Stop);
        const int Asked = 40;
        for (int n = 1; n <= Asked; n++)
        {
            await socket.SendAsync(Encoding.UTF8.GetBytes(FormattableString.Invariant($"{{\"n\":{n},\"object\":\"mug\",\"handle\":\"fulcrum\",\"x\":{21 + 0.05 * n},\"y\":19}}")), WebSocketMessageType.Text, true, Stop);
        }

        List<string> replies = [];
        while (replies.Count == 0 || !replies[^1].Contains(FormattableString.Invariant($"\"n\":{Asked},"), StringComparison.Ordinal))
        {
            string text = await Hear(socket);
            if (text.Contains("\"say\":\"shown\"", StringComparison.Ordinal))
            {
                replies.Add(text);
            }
        }

        Assert.InRange(replies.Count, 1, Asked);
        Assert.Contains("\"value\":\"23 mm\"", replies[^1], StringComparison.Ordinal);
        Assert.Contains("[\"21.3 mm\"", _demo.Text, StringComparison.Ordinal); // a move is no edit until it is let go
    }

    [Theory]
    [InlineData("not json")]
    [InlineData("{}")]
    [InlineData("{\"n\":\"x\",\"handle\":7,\"width\":1e300}")]
    [InlineData("[1,2]")]
    public async Task Nonsense_on_the_line_ends_nothing(string nonsense)
    {
        using ClientWebSocket socket = new();
        socket.Options.SetRequestHeader("Origin", Own);
        await socket.ConnectAsync(new($"ws://{_server.Address.Authority}/line?page=drive"), Stop);
        await Hear(socket);
        await socket.SendAsync(Encoding.UTF8.GetBytes(nonsense), WebSocketMessageType.Text, true, Stop);
        Assert.Contains("\"say\"", await Hear(socket), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/../hand.toml")]
    [InlineData("/own/x/..%2f..%2fhand.toml")]
    [InlineData("/hand.toml")]
    [InlineData("/drive/..%2fhand.toml")]
    [InlineData("/body/parts-log.csv")]
    public async Task No_file_of_a_folder_is_served(string path)
    {
        using HttpResponseMessage reply = await _client.GetAsync(At(path), Stop);
        Assert.Equal(HttpStatusCode.NotFound, reply.StatusCode);
    }

    [Fact]
    public async Task An_upload_is_held_to_its_size_and_kind()
    {
        using HttpResponseMessage large = await Upload("sheet.csv", new string('x', PageServer.LargestUpload + 1));
        Assert.True(large.StatusCode is HttpStatusCode.RequestEntityTooLarge or HttpStatusCode.UnsupportedMediaType, large.StatusCode.ToString());
        using HttpResponseMessage program = await Upload("sheet.exe", "MZ");
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, program.StatusCode);
        using HttpResponseMessage sheet = await Upload("measured.csv", await File.ReadAllTextAsync(Path.Combine(_demo.Folder, "measured.csv"), Stop));
        Assert.Equal(HttpStatusCode.SeeOther, sheet.StatusCode);
        Assert.True(File.Exists(Path.Combine(_demo.Folder, "hand.measured.csv")));
    }

    [Fact]
    public async Task The_page_weighs_little()
    {
        foreach ((WorkPageAttribute page, _) in PageTable.All)
        {
            using HttpRequestMessage request = new(HttpMethod.Get, At("/" + page.Address)) { Headers = { { "Accept-Encoding", "br" } } };
            using HttpResponseMessage reply = await _client.SendAsync(request, Stop);
            byte[] bytes = await reply.Content.ReadAsByteArrayAsync(Stop);
            Assert.Equal("br", Assert.Single(reply.Content.Headers.ContentEncoding));
            Assert.InRange(bytes.Length, 1000, 200_000);
        }
    }

    private string Own => $"http://{_server.Address.Authority}";

    private Uri At(string path) => new(_server.Address, path);

    private async Task<HttpResponseMessage> Post(string path, string? origin, params (string Name, string Value)[] fields)
    {
        HttpRequestMessage request = new(HttpMethod.Post, At(path)) { Content = new FormUrlEncodedContent(fields.Select(f => KeyValuePair.Create(f.Name, f.Value))) };
        if (origin is not null)
        {
            request.Headers.Add("Origin", origin);
        }

        return await _client.SendAsync(request, Stop);
    }

    private async Task<HttpResponseMessage> Upload(string name, string text)
    {
        HttpRequestMessage request = new(HttpMethod.Post, At("/body/act/upload"))
        {
            Content = new MultipartFormDataContent { { new StringContent(text), "file", name } },
            Headers = { { "Origin", Own } },
        };
        return await _client.SendAsync(request, Stop);
    }

    private static async Task<string> Hear(ClientWebSocket socket)
    {
        using MemoryStream text = new();
        byte[] buffer = new byte[1 << 16];
        ValueWebSocketReceiveResult got;
        do
        {
            got = await socket.ReceiveAsync(buffer.AsMemory(), Stop);
            text.Write(buffer, 0, got.Count);
        }
        while (!got.EndOfMessage);
        return Encoding.UTF8.GetString(text.ToArray());
    }

    [GeneratedRegex("<script[^>]*>", RegexOptions.None, 10_000)]
    private static partial Regex Scripts();

    [GeneratedRegex("\\s(on[a-z]+|style)=\"|<style|javascript:", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex InlineCode();

    [GeneratedRegex("(src|href|action)=\"(https?:)?//", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Outside();
}
