using Npgsql;

namespace Workshop.Web.Tests.Hosting;

/// <summary>One statement on a connection of its own.</summary>
internal static class Sql
{
    public static async Task ExecuteAsync(string connection, string sql, CancellationToken cancellation)
    {
        await using var source = NpgsqlDataSource.Create(connection);
        await using var command = source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync(cancellation);
    }

    public static async Task<object?> ScalarAsync(string connection, string sql, CancellationToken cancellation)
    {
        await using var source = NpgsqlDataSource.Create(connection);
        await using var command = source.CreateCommand(sql);
        return await command.ExecuteScalarAsync(cancellation);
    }
}
