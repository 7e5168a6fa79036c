using System.Collections.Concurrent;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json;
using System.Threading.Channels;
using Graspwright.Page.Hands;
using Graspwright.Page.Pages;
using Graspwright.Page.Works;
using Microsoft.AspNetCore.Http;

namespace Graspwright.Page.Serving;

/// <summary>The lines (web sockets) of the open pages: they are told of changes, and ask their page's questions. Of questions that wait, only the newest is answered.</summary>
internal sealed class Lines
{
    private const int LongestQuestion = 1 << 14;
    private readonly OpenHand _open;
    private readonly ConcurrentDictionary<Line, byte> _all = new();

    public Lines(OpenHand open, LongWorks works)
    {
        _open = open;
        open.Changed += () => Send(Change());
        works.Moved += work => Send(Far(work));
    }

    private void Send(string text)
    {
        foreach (Line line in _all.Keys)
        {
            line.Send(text);
        }
    }

    /// <summary>Takes a line and serves it until it ends.</summary>
    /// <param name="context">The request.</param>
    /// <param name="body">A page's body by its address.</param>
    public async Task Take(HttpContext context, Func<string, PageBody?> body)
    {
        if (!context.WebSockets.IsWebSocketRequest)
        {
            context.Response.StatusCode = StatusCodes.Status426UpgradeRequired;
            return;
        }

        using WebSocket socket = await context.WebSockets.AcceptWebSocketAsync();
        Line line = new(socket, body(context.Request.Query["page"].ToString()));
        _all.TryAdd(line, 0);
        line.Send(Change());
        try
        {
            await line.Serve(context.RequestAborted);
        }
        finally
        {
            _all.TryRemove(line, out _);
        }
    }

    /// <summary>How far a long work is.</summary>
    private static string Far(LongWork work)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream))
        {
            json.WriteStartObject();
            json.WriteString("say", "work");
            json.WriteString("key", work.Name.Key);
            json.WriteBoolean("goes", work.Goes);
            json.WriteNumber("done", work.Done);
            json.WriteNumber("all", work.All);
            json.WriteString("words", work.Words);
            (work.SoFar as ITellsMore)?.Tell(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private string Change() => $"{{\"say\":\"changed\",\"version\":\"{_open.Stamp}\"}}";

    private sealed class Line(WebSocket socket, PageBody? body)
    {
        private readonly Channel<string> _out = Channel.CreateBounded<string>(new BoundedChannelOptions(64) { FullMode = BoundedChannelFullMode.DropOldest });
        private readonly Channel<byte[]> _newest = Channel.CreateBounded<byte[]>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
        private readonly Dictionary<string, object> _keep = new(StringComparer.Ordinal);

        public void Send(string text) => _out.Writer.TryWrite(text);

        public async Task Serve(CancellationToken ended)
        {
            using CancellationTokenSource done = CancellationTokenSource.CreateLinkedTokenSource(ended);
            Task[] all = [Hear(done.Token), Think(done.Token), Talk(done.Token)];
            Task first = await Task.WhenAny(all);
            await done.CancelAsync();
            await Task.WhenAll(all).ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
            if (first.IsFaulted && first.Exception.InnerException is not (WebSocketException or OperationCanceledException))
            {
                await first;
            }
        }

        private async Task Hear(CancellationToken ended)
        {
            byte[] buffer = new byte[LongestQuestion];
            int length = 0;
            while (true)
            {
                ValueWebSocketReceiveResult got = await socket.ReceiveAsync(buffer.AsMemory(length), ended);
                if (got.MessageType != WebSocketMessageType.Text)
                {
                    return;
                }

                length += got.Count;
                if (got.EndOfMessage)
                {
                    _newest.Writer.TryWrite(buffer[..length]);
                    length = 0;
                }
                else if (length == buffer.Length)
                {
                    return; // longer than any question of ours
                }
            }
        }

        private async Task Think(CancellationToken ended)
        {
            await foreach (byte[] question in _newest.Reader.ReadAllAsync(ended))
            {
                if (Answer(question) is { } reply)
                {
                    Send(reply);
                }
            }
        }

        private string? Answer(byte[] question)
        {
            try
            {
                using JsonDocument asked = JsonDocument.Parse(question);
                return body?.Reply(asked.RootElement, _keep);
            }
            catch (JsonException)
            {
                return "{\"say\":\"not understood\"}";
            }
        }

        private async Task Talk(CancellationToken ended)
        {
            await foreach (string text in _out.Reader.ReadAllAsync(ended))
            {
                await socket.SendAsync(Encoding.UTF8.GetBytes(text), WebSocketMessageType.Text, endOfMessage: true, ended);
            }
        }
    }
}
