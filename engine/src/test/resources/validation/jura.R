# Makes jura_points.csv, jura_vgm.csv and jura_fits.csv; run with gstat 2.1.0, R 4.2.2.
# Data: the 259 soil samples of the Swiss Jura (Atteia, Dubois & Webster 1994; Goovaerts 1997), as in
# gstat; here in metres far from the origin, cadmium in thousandths, nickel times a million.
suppressMessages({library(sp);library(gstat)})
f17<-function(d,n) {for(c in names(d)) if(is.double(d[[c]])) d[[c]]<-sprintf("%.17g",d[[c]]); write.csv(d,n,row.names=FALSE,quote=FALSE)}
data(jura)
p<-data.frame(x=jura.pred$Xloc*1000+600000,y=jura.pred$Yloc*1000+5200000,cd=jura.pred$Cd*1e-3,ni=jura.pred$Ni*1e6)
f17(p,"jura_points.csv")
V<-NULL;F<-NULL
for(n in c("cd","ni")) { s<-data.frame(x=p$x,y=p$y,z=p[[n]]); coordinates(s)<-~x+y
  vs<-list(default=variogram(z~1,s),fixed=variogram(z~1,s,cutoff=2000,width=80),cressie=variogram(z~1,s,cutoff=2000,width=80,cressie=TRUE),
           directional=variogram(z~1,s,alpha=c(20,65,110,155),cutoff=1800,width=120))
  for(k in names(vs)) { v<-vs[[k]]; V<-rbind(V,data.frame(value=n,kind=k,np=v$np,dist=v$dist,gamma=v$gamma,dir=v$dir.hor))
    if(k!="directional") for(m in c("Sph","Exp","Gau","Cir","Pen","Mat")) for(w in c(7,1,6)) {
      best<-NULL; for(part in c(1/3,1/10)) { r<-suppressWarnings(fit.variogram(v,vgm(mean(tail(v$gamma,5)),m,max(v$dist)*part,mean(head(v$gamma,3)),kappa=1.5),fit.method=w,debug.level=0))
        if(!attr(r,"singular")&&(is.null(best)||attr(r,"SSErr")<attr(best,"SSErr"))) best<-r }
      if(!is.null(best)) F<-rbind(F,data.frame(value=n,kind=k,model=m,method=w,nugget=best$psill[1],psill=best$psill[2],range=best$range[2],sse=attr(best,"SSErr"))) } } }
f17(V,"jura_vgm.csv"); f17(F,"jura_fits.csv")
