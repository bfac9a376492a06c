namespace Workshop.Web.Hosting;

/// <summary>There is no database to work on. The message is one line for the person at the terminal.</summary>
public sealed class DatabaseUnavailableException : Exception
{
    public DatabaseUnavailableException(string message)
        : base(message)
    {
    }

    public DatabaseUnavailableException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    public DatabaseUnavailableException()
    {
    }
}
