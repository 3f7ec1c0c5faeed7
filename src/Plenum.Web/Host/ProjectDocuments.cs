using Microsoft.AspNetCore.Builder;

namespace Plenum.Web.Host;

public static class ProjectDocuments
{
    public static void Map(WebApplication app) { }
}
