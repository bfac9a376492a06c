using System.Diagnostics;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Workshop.Tests.Hosting;

/// <summary>
/// Counts what the service asks of one database while it is held, for tests that nothing asks once a row. Each test class has
/// a database of its own, so others that run beside it are not counted.
/// </summary>
public sealed class CountedCommands : IObserver<DiagnosticListener>, IObserver<KeyValuePair<string, object?>>, IDisposable
{
    private readonly string database;
    private readonly List<IDisposable> subscriptions = [];
    private int count;

    public CountedCommands(WorkshopApp app)
    {
        ArgumentNullException.ThrowIfNull(app);
        database = app.Database.Name;
        subscriptions.Add(DiagnosticListener.AllListeners.Subscribe(this));
    }

    public int Count => Volatile.Read(ref count);

    public void OnNext(DiagnosticListener value)
    {
        ArgumentNullException.ThrowIfNull(value);
        if (value.Name == Microsoft.EntityFrameworkCore.DbLoggerCategory.Name)
        {
            subscriptions.Add(value.Subscribe(this));
        }
    }

    public void OnNext(KeyValuePair<string, object?> value)
    {
        if (value.Value is CommandEventData { Command.Connection.Database: { } asked } && asked == database
            && value.Key == RelationalEventId.CommandExecuting.Name)
        {
            Interlocked.Increment(ref count);
        }
    }

    public void OnCompleted()
    {
    }

    public void OnError(Exception error)
    {
    }

    public void Dispose() => subscriptions.ForEach(s => s.Dispose());
}
