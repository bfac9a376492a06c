namespace Workshop.Web.Http;

/// <summary>Longest texts, for the columns and the validators alike.</summary>
public static class Limits
{
    public const int Registration = 16;
    public const int Vin = 17;
    public const int Code = 60;
    public const int Name = 120;
    public const int ResourceName = 80;
    public const int HolidayName = 80;
    public const int Phone = 40;
    public const int Email = 160;
    public const int Remark = 4000;
    public const int IdempotencyKey = 100;
    public const int Drive = 40;
    public const int Unit = 12;
}
