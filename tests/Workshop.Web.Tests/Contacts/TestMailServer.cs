using System.Buffers;
using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using MimeKit;
using SmtpServer;
using SmtpServer.ComponentModel;
using SmtpServer.Protocol;
using SmtpServer.Storage;
using Workshop.Web.Features.Contacts;

namespace Workshop.Web.Tests.Contacts;

/// <summary>A mail server on this machine that keeps what it is given and answers as the test says.</summary>
internal sealed class TestMailServer : IAsyncDisposable
{
    private readonly CancellationTokenSource ending = new();
    private readonly Store store = new();
    private readonly Task running;

    public TestMailServer()
    {
        Port = FreePort();
        var options = new SmtpServerOptionsBuilder()
            .ServerName("localhost")
            .Endpoint(new EndpointDefinitionBuilder().Endpoint(new IPEndPoint(IPAddress.Loopback, Port)).Build())
            .Build();
        var services = new SmtpServer.ComponentModel.ServiceProvider();
        services.Add(store);
        running = new SmtpServer.SmtpServer(options, services).StartAsync(ending.Token);
    }

    public int Port { get; }

    /// <summary>The answers to the next mails, in order; 250 when none is left.</summary>
    public ConcurrentQueue<SmtpResponse> Answers => store.Answers;

    /// <summary>Every mail that was handed over, taken or not.</summary>
    public IReadOnlyList<MimeMessage> Seen => [.. store.Seen];

    public IReadOnlyList<string> Recipients => [.. store.Recipients];

    /// <summary>Ends when the first mail is wholly there; it is then held until <see cref="LetGo"/>.</summary>
    public Task HoldFirst()
    {
        store.Hold = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        return store.First.Task;
    }

    public void LetGo() => store.Hold?.TrySetResult();

    public SmtpOptions Options => new()
    {
        Host = "127.0.0.1", Port = Port, Security = SmtpSecurity.None, From = "Test workshop <workshop@example.org>", Sends = false,
    };

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public async ValueTask DisposeAsync()
    {
        LetGo();
        await ending.CancelAsync();
        await running.ContinueWith(_ => { }, TaskScheduler.Default);
        ending.Dispose();
    }

    private sealed class Store : MessageStore
    {
        public ConcurrentQueue<SmtpResponse> Answers { get; } = new();

        public ConcurrentQueue<MimeMessage> Seen { get; } = new();

        public ConcurrentQueue<string> Recipients { get; } = new();

        public TaskCompletionSource First { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public TaskCompletionSource? Hold { get; set; }

        public override async Task<SmtpResponse> SaveAsync(
            ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
        {
            using var stream = new MemoryStream(buffer.ToArray());
            Seen.Enqueue(await MimeMessage.LoadAsync(stream, CancellationToken.None));
            foreach (var to in transaction.To)
            {
                Recipients.Enqueue($"{to.User}@{to.Host}");
            }

            First.TrySetResult();
            if (Hold is { } hold)
            {
                await hold.Task;
            }

            return Answers.TryDequeue(out var answer) ? answer : SmtpResponse.Ok;
        }
    }
}

/// <summary>A mail server that takes the text and hangs up instead of answering.</summary>
internal sealed class BrokenLine : IAsyncDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly Task running;

    public BrokenLine()
    {
        listener.Start();
        running = Serve();
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    public int Texts { get; private set; }

    public async ValueTask DisposeAsync()
    {
        listener.Stop();
        await running.ContinueWith(_ => { }, TaskScheduler.Default);
        listener.Dispose();
    }

    private async Task Serve()
    {
        while (true)
        {
            using var client = await listener.AcceptTcpClientAsync();
            using var reader = new StreamReader(client.GetStream());
            await using var writer = new StreamWriter(client.GetStream()) { NewLine = "\r\n", AutoFlush = true };
            await writer.WriteLineAsync("220 localhost");
            var inText = false;
            while (await reader.ReadLineAsync() is { } line)
            {
                if (inText && line == ".")
                {
                    Texts++;
                    break;
                }

                if (!inText)
                {
                    inText = line.StartsWith("DATA", StringComparison.OrdinalIgnoreCase);
                    await writer.WriteLineAsync(inText ? "354 go on" : "250 localhost");
                }
            }
        }
    }
}
