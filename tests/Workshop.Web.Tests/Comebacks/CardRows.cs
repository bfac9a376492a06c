using Npgsql;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Comebacks;

/// <summary>
/// All rows that name a card, or name a row that does (the answers to its estimates, the lines of its findings), table by table as the
/// foreign keys lead.
/// </summary>
internal static class CardRows
{
    private const string KeysOfOneColumn = """
        select c.conrelid::regclass::text, a.attname::text, c.confrelid::regclass::text, f.attname::text
        from pg_constraint c
        join pg_attribute a on a.attrelid = c.conrelid and a.attnum = c.conkey[1]
        join pg_attribute f on f.attrelid = c.confrelid and f.attnum = c.confkey[1]
        where c.contype = 'f' and cardinality(c.conkey) = 1 and c.connamespace = 'public'::regnamespace
        order by 1, 2
        """;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>How many rows each table has of the card, and what they are.</summary>
    public static async Task<IReadOnlyDictionary<string, string>> Of(WorkshopApp app, int number)
    {
        await using var source = NpgsqlDataSource.Create(app.Database.Connections.Direct);
        var keys = await Read(source, KeysOfOneColumn, r => (Table: r.GetString(0), Column: r.GetString(1), Of: r.GetString(2), Named: r.GetString(3)));
        var conditions = new Dictionary<string, string>(StringComparer.Ordinal) { ["job_cards"] = $"number = {number}" };
        foreach (var table in await Read(
            source, "select table_name::text from information_schema.columns where table_schema = 'public' and column_name = 'job_card_number'", r => r.GetString(0)))
        {
            conditions[table] = $"job_card_number = {number}";
        }

        // Each table once, by its first key to what is of the card: keys lead on until nothing new is reached.
        for (var before = 0; before < conditions.Count;)
        {
            before = conditions.Count;
            foreach (var of in keys.Where(k => !conditions.ContainsKey(k.Table)).GroupBy(k => k.Table).ToList())
            {
                var ways = of.Where(k => conditions.ContainsKey(k.Of)).Select(k => $"{k.Column} in (select {k.Named} from {k.Of} where {conditions[k.Of]})").ToList();
                if (ways.Count > 0)
                {
                    conditions[of.Key] = string.Join(" or ", ways);
                }
            }
        }

        var each = conditions.Keys.Order(StringComparer.Ordinal).Select(t =>
            $"select '{t}', count(*) || ' ' || coalesce(md5(string_agg(t::text, '|' order by t::text)), '') from {t} t where {conditions[t]}");
        var rows = (await Read(source, string.Join(" union all ", each), r => (r.GetString(0), r.GetString(1)))).ToDictionary(r => r.Item1, r => r.Item2, StringComparer.Ordinal);
        Assert.True(rows.Count > 50, string.Join(", ", rows.Keys));
        return rows;
    }

    private static async Task<List<T>> Read<T>(NpgsqlDataSource source, string sql, Func<NpgsqlDataReader, T> row)
    {
        await using var command = source.CreateCommand(sql);
        await using var reader = await command.ExecuteReaderAsync(Ct);
        var rows = new List<T>();
        while (await reader.ReadAsync(Ct))
        {
            rows.Add(row(reader));
        }

        return rows;
    }
}
